// A part of its own, for the worker to ask for.

export { planEvenings } from '@evenfall/core';
