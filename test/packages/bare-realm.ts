// A realm with nothing but the language: no clock, no chance, no console, no process, no timer, no network, no page,
// and nothing that reads the machine's zone or language.

import { createContext, runInContext } from 'node:vm';

/**
 * All that core may name. Dates from a number or from text with its offset; `Intl.DateTimeFormat` with language and
 * zone given. `Symbol` is the bundler's. `WeakRef` holds memory that is written before it is read: whether the collector
 * has had it changes no answer, which test/core/ramp/memory.test.ts holds.
 */
export const ALLOWED = [
  ...['Array', 'Boolean', 'Date', 'Error', 'Intl', 'JSON', 'Map', 'Math', 'Number', 'Object', 'RangeError'],
  ...['RegExp', 'Set', 'String', 'Symbol', 'TypeError', 'WeakMap', 'WeakRef'],
  ...['Float32Array', 'Float64Array', 'Int8Array', 'Int16Array', 'Int32Array', 'Uint8Array', 'Uint16Array'],
  ...[
    'Uint32Array',
    'Infinity',
    'NaN',
    'globalThis',
    'isFinite',
    'isNaN',
    'parseFloat',
    'parseInt',
    'undefined',
  ],
] as const;

const PREPARE = `
  const ask = (what) => function () { throw new Error('core asked for ' + what); };
  const trap = (owner, name, what) => Object.defineProperty(owner, name, { value: ask(what) });

  trap(Math, 'random', 'Math.random');
  const GivenDate = Date;
  globalThis.Date = function (...given) {
    if (!new.target) throw new Error('core asked for the time as text');
    if (given.length !== 1 || typeof given[0] !== 'number') throw new Error('core made a date of ' + given.length + ' arguments, ' + typeof given[0]);
    return new GivenDate(given[0]);
  };
  Date.prototype = GivenDate.prototype;
  Date.UTC = GivenDate.UTC;
  trap(Date, 'now', 'Date.now');
  Date.parse = (text) => {
    if (!/T.*(Z|[+-]\\d\\d:\\d\\d)$/.test(text)) throw new Error('core read ' + text + ' in the zone of the machine');
    return GivenDate.parse(text);
  };
  for (const name of Object.getOwnPropertyNames(GivenDate.prototype)) {
    if (/^(get|set|to)/.test(name) && !/UTC|^getTime$|^setTime$|^toISOString$|^toJSON$/.test(name)) {
      trap(GivenDate.prototype, name, 'Date.prototype.' + name);
    }
  }
  const Format = Intl.DateTimeFormat;
  Object.defineProperty(globalThis, 'Intl', { value: { DateTimeFormat: function (language, options) {
    if (typeof language !== 'string' || typeof options.timeZone !== 'string') throw new Error('core asked for the language or zone of the machine');
    const format = new Format(language, options);
    const given = (atMs) => { if (typeof atMs !== 'number') throw new Error('core formats no given time'); return atMs; };
    return { format: (atMs) => format.format(given(atMs)), formatToParts: (atMs) => format.formatToParts(given(atMs)) };
  } } });
  for (const { prototype } of [Array, Number, String, Float64Array]) {
    for (const name of ['toLocaleString', 'toLocaleLowerCase', 'toLocaleUpperCase', 'localeCompare']) {
      if (name in prototype) trap(prototype, name, name);
    }
  }
  for (const name of Object.getOwnPropertyNames(globalThis)) {
    if (!ALLOWED.includes(name) && !delete globalThis[name]) throw new Error(name + ' stays');
  }
`;

/**
 * Runs a script in a new bare realm, then an expression.
 *
 * @returns the expression's value, which must be text
 */
export function runBare(script: string, expression: string): string {
  const realm = createContext(Object.create(null), { codeGeneration: { strings: false, wasm: false } });
  runInContext(`{ const ALLOWED = ${JSON.stringify(ALLOWED)}; ${PREPARE} }`, realm);
  runInContext(script, realm);
  const value: unknown = runInContext(expression, realm);
  if (typeof value !== 'string') throw new Error(`${expression} is ${typeof value}`);
  return value;
}
