// Whether two values are the same, told by a few letters: which plan an evening belongs to, whether it is whole.

/**
 * Sixteen hexadecimal digits that differ where plain values do, whatever the order of their keys. No seal: anybody can
 * make one. Two lanes of 32 bits, each a byte-wise multiplicative hash in the manner of FNV-1a.
 */
export function digestOf(value: unknown): string {
  const text = JSON.stringify(value, sorted) ?? '';
  let a = 0x811c9dc5;
  let b = 0x9e3779b9;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code, 0x85ebca6b);
    b ^= b >>> 13;
  }
  return hex(a) + hex(b);
}

function sorted(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function hex(lane: number): string {
  return (lane >>> 0).toString(16).padStart(8, '0');
}
