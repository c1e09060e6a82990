// A part of its own, for the worker to ask for.

export { planChoices } from '@evenfall/core';
