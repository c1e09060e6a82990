import { chromium } from 'playwright-core';
import { chromiumPath, FLAGS } from './browser.mjs';
import { PAGE } from './build-page.mjs';
import { serve } from './serve.mjs';
import { readFileSync } from 'node:fs';
const src = readFileSync('packages/tools/page-speed.mjs','utf8');
const STILL = eval('(' + src.match(/const STILL = (\{[\s\S]*?\n\});/)[1] + ')');
const server = await serve(PAGE);
const browser = await chromium.launch({ executablePath: chromiumPath(), args: FLAGS });
const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
await page.goto(`http://127.0.0.1:${server.address().port}/#shoot=` + Buffer.from(JSON.stringify(STILL)).toString('base64url'));
await page.waitForTimeout(2500);
await page.getByRole('slider', { name: 'Interval of the shoot' }).focus();
for (let i = 0; i < 10; i++) { await page.keyboard.press(i % 2 ? 'ArrowLeft' : 'ArrowRight'); await page.waitForTimeout(300); }
await browser.startTracing(page, { categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'v8.execute', 'cc','blink'] });
for (let i = 0; i < 10; i++) { await page.keyboard.press(i % 2 ? 'ArrowLeft' : 'ArrowRight'); await page.waitForTimeout(400); }
const t = JSON.parse((await browser.stopTracing()).toString());
const ev = t.traceEvents.filter(e => e.ph === 'X');
const threads = new Map(t.traceEvents.filter(e => e.name === 'thread_name').map(e => [e.pid + '/' + e.tid, e.args.name]));
const sum = new Map();
for (const e of ev) { const k = (threads.get(e.pid + '/' + e.tid) ?? '?') + ' ' + e.name; const s = sum.get(k) ?? [0, 0]; s[0] += e.dur / 1000; s[1]++; sum.set(k, s); }
console.log('nodes', await page.evaluate(() => document.querySelectorAll('*').length));
[...sum].sort((a, b) => b[1][0] - a[1][0]).slice(0, 45).forEach(([k, [ms, n]]) => console.log((ms / 10).toFixed(1), n, k));
await browser.close(); server.close();
