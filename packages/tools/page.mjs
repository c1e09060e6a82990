// npm run page: builds the page, serves it on this machine, prints its address.

import { buildPage, ONE_FILE, PAGE } from './build-page.mjs';
import { fail, install } from './ready.mjs';
import { serve } from './serve.mjs';

install();
console.log('Building the page …');
try {
  buildPage();
} catch (error) {
  fail(error.message);
}

const wanted = Number(process.env.PORT ?? 4173);
const server = await serve(PAGE, wanted).catch(() => serve(PAGE));
console.log(`\nThe page is at  http://localhost:${server.address().port}/  until you press Ctrl+C.`);
console.log(`The same as one file, to open from disk:  ${ONE_FILE.slice(process.cwd().length + 1)}`);
