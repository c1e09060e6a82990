// The light model held against every open data set in test/data/light, as a table.
//
//   npx tsc -b packages/core && node packages/tools/light-accuracy.mjs            prints it
//   npx tsc -b packages/core && node packages/tools/light-accuracy.mjs --write    writes it into docs/light.md

import { readFileSync } from 'node:fs';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { markdownTable, partBetween, writeBetween } from './marked-table.mjs';

const root = new URL('../..', import.meta.url);
const DOC = fileURLToPath(new URL('docs/light.md', root));
const OPEN = '<!-- accuracy: written by packages/tools/light-accuracy.mjs -->';
const CLOSE = '<!-- end of accuracy -->';

/**
 * @typedef {typeof import('../core/src/exposure/exposure.js') &
 *   typeof import('../core/src/light/sunlight.js') &
 *   typeof import('../core/src/light/sky.js') &
 *   typeof import('../core/src/light/moon.js') &
 *   typeof import('../core/src/light/night.js') &
 *   typeof import('../core/src/light/scene.js') &
 *   typeof import('../core/src/light/upright.js') &
 *   typeof import('../core/src/light/words.js')} Core
 */

/**
 * Rows of a CSV file in test/data/light as objects by column.
 *
 * @returns {Record<string, string>[]}
 */
export function readRows(name) {
  const text = readFileSync(new URL(`test/data/light/${name}.csv`, root), 'utf8');
  const [header, ...rows] = text.trim().split(/\r?\n/).map(cells);
  return rows.map((row) => Object.fromEntries(header.map((key, i) => [key, row[i] ?? ''])));
}

function cells(line) {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain,
  );
}

/**
 * "410..585" or "0.008" as [low, high].
 *
 * @returns {[number, number]}
 */
function range(text) {
  const [low, high = low] = text.split('..').map(Number);
  return [low, high];
}

/** Stops by which a value lies outside a range; 0 inside. */
function stopsOutside(value, [low, high]) {
  return value < low ? Math.log2(value / low) : value > high ? Math.log2(value / high) : 0;
}

const NOON = { moonAltitudeDeg: -40, moonAzimuthDeg: 0, moonPhaseAngleDeg: 180, moonDistanceKm: 384400 };
/** @type {Parameters<Core['sceneOf']>[0]} */
const TOWARD_SUN = {
  facing: 'toward-sun',
  viewAltitudeDeg: 15,
  skyShare: 0.5,
  cloud: 'clear',
  night: 'rural',
  lamps: 'none',
};

/**
 * Illuminance of a level and of upright surfaces under the model's clear sky, by summing patches of it.
 *
 * @param {Core} light
 * @param {number} sunAltitudeDeg
 */
export function domeOfModel(light, sunAltitudeDeg) {
  const rings = 45;
  const sectors = 36;
  const deg = Math.PI / 180;
  let levelLx = 0;
  let zenithward = 0;
  for (let ring = 0; ring < rings; ring++) {
    const viewDeg = (90 * (ring + 0.5)) / rings;
    const ratio = light.clearSkyToward(viewDeg);
    const patch = Math.cos(viewDeg * deg) * ((90 / rings) * deg) * ((360 / sectors) * deg);
    for (let sector = 0; sector < sectors; sector++) {
      const azimuthDeg = Math.abs((360 * (sector + 0.5)) / sectors - 180);
      const luminance = ratio(sunAltitudeDeg, azimuthDeg) * light.clearIlluminanceLx(sunAltitudeDeg);
      levelLx += luminance * patch * Math.sin(viewDeg * deg);
      zenithward += patch * Math.sin(viewDeg * deg);
    }
  }
  return levelLx * (Math.PI / zenithward);
}

/**
 * Every comparison: which part, against what, in which group, and by how many stops the model reads brighter.
 * `limitEv` is what the tests hold the model to; absent where a set is shown only.
 *
 * @param {Core} light
 * @returns {{part: string, against: string, limitEv?: number | undefined, label: string, stops: number}[]}
 */
export function comparisons(light) {
  const list = [];
  const add = (group, label, stops) => list.push({ ...group, label, stops });

  const supplement = {
    part: 'Level ground, clear',
    against: 'Explanatory Supplement 1992, evaluated',
    limitEv: 0.02,
  };
  const circular = {
    part: 'Level ground, clear',
    against: 'USNO Circular 171, sun from -10° up',
    limitEv: 0.3,
  };
  for (const row of readRows('model_horizontal_illuminance_by_altitude')) {
    const sunDeg = Number(row.sun_altitude_deg);
    const lx = light.clearIlluminanceLx(sunDeg);
    add(supplement, `sun ${sunDeg}°`, Math.log2(lx / Number(row.illuminance_lx_seidelmann)));
    if (sunDeg >= -10)
      add(circular, `sun ${sunDeg}°`, Math.log2(lx / Number(row.illuminance_lx_c171_no_floor)));
  }
  for (const row of readRows('usno_c171_certification')) {
    // Altitudes as printed, to a degree: the circular adds refraction first, this model has none.
    const sunDeg = Number(row.sun_alt_deg);
    const group = {
      part: 'Level ground, clear',
      against: 'USNO Circular 171, certification rows',
      limitEv: 0.3,
    };
    add(group, `sun ${sunDeg}°`, Math.log2(light.clearIlluminanceLx(sunDeg) / Number(row.sun_lx)));
  }
  const kept = {
    part: 'Level ground, clear',
    against: 'Koomen et al. 1952, their sky summed over the dome',
    limitEv: 0.3,
  };
  const weak = {
    ...kept,
    limitEv: 0.7,
    against: `${kept.against}: sun at -3° and 0°, weak cells near the sun`,
  };
  for (const row of readRows('koomen_integrated')) {
    const sunDeg = Number(row.sun_altitude_deg);
    const stops = Math.log2(light.clearIlluminanceLx(sunDeg) / Number(row.horizontal_lx));
    add(sunDeg === -3 || sunDeg === 0 ? weak : kept, `sun ${sunDeg}°`, stops);
  }
  for (const row of readRows('handbook_natural_light')) {
    const sunDeg = Number(row.sun_altitude_deg);
    const clear = /clear|fine/.test(row.conditions) && !/cloud/.test(row.conditions);
    if (row.sun_altitude_deg === '' || row.illuminance_lx === '' || !clear) continue;
    const read = row.trust.startsWith('read');
    if (!read && row.trust !== 'memory') continue;
    const deep = sunDeg < -15;
    const group = {
      part: 'Level ground, clear',
      against: row.source + (read ? '' : ' (from memory)'),
      limitEv: read && !deep ? 0.3 : undefined,
    };
    if (/Seidelmann/.test(row.source)) continue;
    // -18° in the glossary is scattered sunlight alone, on which the sources differ most: shown only.
    if (deep) group.against += ', sun at -18°';
    add(group, `sun ${sunDeg}°`, stopsOutside(light.clearIlluminanceLx(sunDeg), range(row.illuminance_lx)));
  }
  for (const row of readRows('singapore_balakrishnan_2019')) {
    if (!/clear/.test(row.conditions)) continue;
    const sunDeg = Number(row.sun_altitude_deg);
    // The others: 60 and 68 lm/W, where daylight has over 100; and 204 lx at -0.54°, ten minutes before 89 lx.
    const sound = sunDeg === -3.99 || sunDeg === -2.84 || sunDeg === 55.66;
    const group = {
      part: 'Level ground, clear',
      against: `Balakrishnan 2019, Singapore, rows labelled clear${sound ? '' : ' that their other columns contradict'}`,
      limitEv: sound ? 0.3 : undefined,
    };
    add(group, `sun ${sunDeg}°`, Math.log2(light.clearIlluminanceLx(sunDeg) / Number(row.illuminance_lx)));
  }

  const toward = new Map();
  const skyCdM2 = (sunDeg, viewDeg, azimuthDeg) => {
    if (!toward.has(viewDeg)) toward.set(viewDeg, light.clearSkyToward(viewDeg));
    return toward.get(viewDeg)(sunDeg, azimuthDeg) * light.clearIlluminanceLx(sunDeg);
  };
  for (const row of readRows('koomen_1952_twilight_sky_luminance')) {
    const [sunDeg, viewDeg, azimuthDeg] = [
      row.sun_altitude_deg,
      row.view_altitude_deg,
      row.azimuth_from_sun_deg,
    ].map(Number);
    const group = {
      part: 'Sky by direction',
      against: row.flag
        ? 'Koomen et al. 1952, cells not to be trusted'
        : 'Koomen et al. 1952, measured cells',
      limitEv: row.flag ? undefined : 0.001,
    };
    const stops = Math.log2(skyCdM2(sunDeg, viewDeg, azimuthDeg) / Number(row.luminance_cdm2_sea_level));
    add(group, `sun ${sunDeg}°, ${viewDeg}° up, ${azimuthDeg}° from the sun`, stops);
  }
  for (const sunDeg of [-15, -12, -9, -6, -3, 0, 3, 5, 10, 20, 40]) {
    const skyLx = light.clearIlluminanceLx(sunDeg) * light.skyPartOfSunlight(sunDeg);
    const group = {
      part: 'Sky by direction',
      against: 'level ground of the model: its sky summed over the dome',
      limitEv: 0.7,
    };
    add(group, `sun ${sunDeg}°`, Math.log2(domeOfModel(light, sunDeg) / skyLx));
  }

  const onUpright = light.clearSkyOnUpright();
  for (const row of readRows('koomen_integrated')) {
    const sunDeg = Number(row.sun_altitude_deg);
    // From 0° up the model's walls have the beam on them, which these sums leave out.
    if (sunDeg >= 0) continue;
    for (const { azimuthDeg, key } of [
      { azimuthDeg: 0, key: 'vertical_facing_sun_lx' },
      { azimuthDeg: 90, key: 'vertical_side_lx' },
      { azimuthDeg: 180, key: 'vertical_facing_away_lx' },
    ]) {
      const group = {
        part: 'Walls and faces',
        against: 'Koomen et al. 1952, their sky summed over half the dome, over level ground',
        limitEv: 0.15,
      };
      const reference = Number(row[key]) / Number(row.horizontal_lx);
      add(group, `sun ${sunDeg}°, ${azimuthDeg}° off`, Math.log2(onUpright(sunDeg, azimuthDeg) / reference));
    }
  }

  const moon = (phaseAngleDeg, altitudeDeg) =>
    light.moonIlluminanceLx({ altitudeDeg, phaseAngleDeg, distanceKm: 384400 });
  const moonGroup = (against, limitEv) => ({ part: 'Moon on level ground', against, limitEv });
  add(
    moonGroup('MoonShine manual 2024: never above 0.36 lx', 0.2),
    'full, overhead, nearest',
    stopsOutside(
      light.moonIlluminanceLx({ altitudeDeg: 90, phaseAngleDeg: 1.5, distanceKm: 356500 }),
      [0, 0.36],
    ),
  );
  add(
    moonGroup('Longcore 2017: quarter moon 0.01 to 0.03 lx', 0.2),
    'quarter, 60° up',
    stopsOutside(moon(90, 60), [0.01, 0.03]),
  );
  const polynomials = readRows('seidelmann_1992_polynomials').filter((row) => row.body === 'moon');
  for (const altitudeDeg of [10, 30, 60, 90]) {
    const row = polynomials.find(
      (p) => altitudeDeg >= Number(p.alt_from_deg) && altitudeDeg <= Number(p.alt_to_deg),
    );
    if (row === undefined) throw new Error(`no polynomial for ${altitudeDeg}°`);
    const x = altitudeDeg / 90;
    const [l0, l1, l2, l3] = [row.l0, row.l1, row.l2, row.l3].map(Number);
    for (const phase of [5, 45, 90]) {
      const log = l0 + x * (l1 + x * (l2 + x * l3)) - 8.68e-3 * phase - 2.2e-9 * phase ** 4;
      add(
        moonGroup('Explanatory Supplement 1992, moon'),
        `phase ${phase}°, ${altitudeDeg}° up`,
        Math.log2(moon(phase, altitudeDeg) / 10 ** log),
      );
    }
  }
  const moonlit = light.moonlitSkyCdM2(
    { altitudeDeg: 20, phaseAngleDeg: 45, distanceKm: light.MEAN_DISTANCE_KM },
    70,
    50,
    0.15,
  );
  // V = (20.7233 - ln(B / 34.08)) / 0.92104 with B in nanolambert.
  const publishedCdM2 = 34.08 * Math.exp(20.7233 - 0.92104 * 19.855) * (1e-5 / Math.PI);
  add(
    { part: 'Moonlit sky', against: 'Krisciunas & Schaefer 1991, published check', limitEv: 0.005 },
    '70° up, 50° from the moon',
    Math.log2(moonlit / publishedCdM2),
  );

  for (const row of readRows('night_sky_sqm_bortle')) {
    const cdM2 = light.magToLuminanceCdM2(Number(row.zenith_mag_arcsec2));
    add(
      { part: 'Night sky', against: 'luminance of sky by magnitude, table', limitEv: 0.02 },
      `${row.zenith_mag_arcsec2} mag`,
      Math.log2(cdM2 / (Number(row.luminance_mcd_m2) / 1000)),
    );
  }

  const metered = light.sceneLight(light.sceneOf(TOWARD_SUN, 270));
  const ev = (sunAltitudeDeg) => metered({ ...NOON, sunAltitudeDeg, sunAzimuthDeg: 270 }).ev100;
  const incident = (lx) => light.illuminanceToEv100(lx);
  const outside = (value, low, high) => (value < low ? value - low : value > high ? value - high : 0);
  const table = readRows('photographic_scene_ev');
  const scene = (name, value, label) => {
    const row = table.find((r) => r.scene === name);
    if (row === undefined) throw new Error(`no row ${name}`);
    const group = { part: 'Metered scene', against: 'ANSI PH2.7 scene table', limitEv: 1 };
    add(group, label, outside(value, Number(row.ev100_low), Number(row.ev100_high)));
  };
  scene('Sunset/skyline just before sunset', ev(1), 'just before sunset');
  scene('Sunset/skyline at sunset', ev(-0.833), 'at sunset');
  scene('Sunset/skyline just after sunset', ev(-2), 'just after sunset');
  scene(
    'Typical scene, full or slightly hazy sun',
    incident(light.clearIlluminanceLx(45)),
    'full sun, incident',
  );
  scene('Landscape, full moon alt >40', incident(moon(3, 60)), 'full moon 60° up, incident');
  scene('Landscape, gibbous moon', incident(moon(30, 60)), 'gibbous moon 60° up, incident');
  scene('Landscape, quarter moon', incident(moon(90, 60)), 'quarter moon 60° up, incident');
  return list;
}

/**
 * The comparisons as a Markdown table, one line for each data set.
 *
 * @param {Core} light
 */
export function accuracyTable(light) {
  const groups = new Map();
  for (const row of comparisons(light)) {
    const key = `${row.part}|${row.against}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const signed = (stops) => `${stops < -0.005 ? '−' : stops > 0.005 ? '+' : ''}${Math.abs(stops).toFixed(2)}`;
  const lines = [...groups.values()].map((rows) => {
    const mean = rows.reduce((sum, { stops }) => sum + stops, 0) / rows.length;
    const worst = rows.reduce((a, b) => (Math.abs(b.stops) > Math.abs(a.stops) ? b : a));
    const { part, against, limitEv } = rows[0];
    const at = Math.abs(worst.stops) < 0.005 ? '' : ` (${worst.label})`;
    const limit = limitEv === undefined ? 'shown only' : `${limitEv}`;
    return [part, against, `${rows.length}`, signed(mean), `${signed(worst.stops)}${at}`, limit];
  });
  const head = [
    'part of the model',
    'held against',
    'rows',
    'mean, stops',
    'worst, stops',
    'tests hold it within',
  ];
  return markdownTable(head, lines);
}

/** The table as it stands in docs/light.md. */
export function writtenTable() {
  return partBetween(DOC, OPEN, CLOSE);
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  const dist = (path) => import(new URL(`packages/core/dist/${path}.js`, root).href);
  const modules = await Promise.all(
    [
      'exposure/exposure',
      'light/sunlight',
      'light/sky',
      'light/moon',
      'light/night',
      'light/scene',
      'light/upright',
      'light/words',
    ].map(dist),
  );
  const table = accuracyTable(Object.assign({}, ...modules));
  if (argv.includes('--write')) {
    writeBetween(DOC, OPEN, CLOSE, table);
  } else {
    console.log(table);
  }
}
