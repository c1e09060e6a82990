import { test } from 'vitest';
import { exhaustiveRamp } from '../../reference/exhaustive-ramp.js';
import { highsRamp, loadSolver } from '../../reference/highs-ramp.js';
import { rulesOf } from '../../reference/kit-settings.js';
import { checkRamp } from '../../reference/ramp-cost.js';
import { randomProblem } from '../../reference/random-problem.js';

test('try', async () => {
  const highs = await loadSolver();
  let bad = 0,
    inf = 0,
    filt = 0,
    affected = 0,
    ap = 0,
    bulb = 0,
    bulbf = 0,
    te = 0,
    th = 0,
    worstH = 0,
    inf0 = 0,
    gapfg = 0,
    two = 0;
  const n = Number(process.env.NSEEDS ?? 200);
  for (let seed = 1; seed <= n; seed++) {
    const p = randomProblem(seed);
    let t = performance.now();
    const e = exhaustiveRamp(p);
    te += performance.now() - t;
    t = performance.now();
    const h = highsRamp(highs, p);
    const dt = performance.now() - t;
    th += dt;
    worstH = Math.max(worstH, dt);
    if (dt > 1500) console.log(seed, 'slow', dt, rulesOf(p).choices.length, p.targetEv100.length);
    if (e.kind !== h.kind) {
      console.log(seed, 'verdict', e.kind, h.kind);
      bad++;
      continue;
    }
    if (e.kind === 'ok' && h.kind === 'ok') {
      const c = checkRamp(p, e.frames),
        d = checkRamp(p, h.frames);
      const ok =
        Math.abs(e.objective - h.objective) < 1e-6 &&
        c.violations.length === 0 &&
        d.violations.length === 0 &&
        Math.abs(c.objective - e.objective) < 1e-9 * Math.max(1, e.objective) &&
        Math.abs(d.objective - e.objective) < 1e-6;
      if (!ok) {
        bad++;
        console.log(seed, e.objective, h.objective, c.objective, d.objective, c.violations, d.violations);
      }
      const f = e.frames.filter((x, i) => i > 0 && x.stack !== e.frames[i - 1]!.stack).length;
      if (f) {
        filt++;
        if (p.limits.framesLostPerFilterChange) affected++;
        if (p.kit.bulb) bulbf++;
      }
      if (f > 1) two++;
      if (e.frames.some((x, i) => i > 0 && x.apertureStep !== e.frames[i - 1]!.apertureStep)) ap++;
      if (p.kit.bulb) bulb++;
    } else if (e.kind === 'infeasible') {
      inf++;
      if (e.frame === 0) inf0++;
      if (e.frame !== e.firstNeverJudged) gapfg++;
    }
  }
  console.log({ bad, inf, inf0, gapfg, filt, two, affected, ap, bulb, bulbf, te, th, worstH });
}, 600000);
