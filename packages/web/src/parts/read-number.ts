// What people type or paste for a number, read as they mean it.

const FRONT = /^(?:f\s*\/|iso|ev)\s*/i;
const UNIT = /\s*(?:s|sec|min|m|mm|km|MB|GB|mb|gb|°|º|%|x|×|EV|ev|stops?)$/; // a capital S is the south

/** A number where the text is one: "3.2s", "1/125", "f/8", "ISO 800", "6,26 W"; else undefined. */
export function readNumber(text: string): number | undefined {
  const plain = straight(text);
  const value = plainNumber(plain.replace(FRONT, '').replace(UNIT, ''));
  return value ?? readAngle(plain);
}

const straight = (text: string) => text.trim().replaceAll(/[−–]/g, '-').replaceAll(/\s+/g, ' ');

function plainNumber(text: string): number | undefined {
  const [, over, under] = /^(\d+)\/(\d+(?:[.,]\d+)?)$/.exec(text) ?? [];
  if (over !== undefined && under !== undefined) return Number(over) / Number(under.replace(',', '.'));
  const value = Number(text.replace(',', '.'));
  return text !== '' && Number.isFinite(value) ? value : undefined;
}

// Degrees, minutes, seconds; the German O for the east.
const ANGLE =
  /^(?<front>[NSEWO])? ?(?<sign>-)?(?<deg>\d+(?:[.,]\d+)?) ?°? ?(?:(?<min>\d+(?:[.,]\d+)?) ?['′’] ?)?(?:(?<sec>\d+(?:[.,]\d+)?) ?["″”] ?)?(?<back>[NSEWO])?$/i;

function angle(text: string) {
  const found = ANGLE.exec(text)?.groups;
  if (found === undefined) return undefined;
  const part = (name: string) => Number((found[name] ?? '0').replace(',', '.'));
  const side = (found.front ?? found.back ?? '').toUpperCase();
  const negative = found.sign !== undefined || side === 'S' || side === 'W';
  const deg = part('deg') + part('min') / 60 + part('sec') / 3600;
  return { deg: round(negative ? -deg : deg), side };
}

/** A millionth of a degree is a tenth of a metre. */
const round = (deg: number) => Math.round(deg * 1e6) / 1e6;

const readAngle = (text: string) => angle(text)?.deg;

/** Two coordinates in one text, "53.35, -6.26" or "53°21′N 6°16′W", latitude first unless letters say otherwise. */
export function readPlace(text: string): { latitudeDeg: number; longitudeDeg: number } | undefined {
  const plain = straight(text);
  // A comma alone may be a decimal one: it parts two numbers only where they have points.
  for (const between of [/; ?/g, /, /g, / /g, /,(?=.*\.)/g]) {
    for (const { index, 0: mark } of plain.matchAll(between)) {
      const [a, b] = [angle(plain.slice(0, index).trim()), angle(plain.slice(index + mark.length).trim())];
      if (a === undefined || b === undefined) continue;
      const turned = /[EWO]/.test(a.side) || /[NS]/.test(b.side);
      const [lat, lon] = turned ? [b, a] : [a, b];
      if (Math.abs(lat.deg) <= 90 && Math.abs(lon.deg) <= 180) {
        return { latitudeDeg: lat.deg, longitudeDeg: lon.deg };
      }
    }
  }
  return undefined;
}
