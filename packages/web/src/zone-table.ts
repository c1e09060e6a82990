// The table of time zones, which is large and of the older kind of module: what it takes to read one comes with it.

export { default as zoneAt } from '@photostructure/tz-lookup';
