// Checks at the door, shared by every room. Each throws RangeError naming the argument, the rule and the value.

/** Returns `value` if it is finite and above zero. */
export function positive(name: string, value: number): number {
  if (value > 0 && Number.isFinite(value)) return value;
  throw new RangeError(`${name} must be positive and finite, got ${value}`);
}

/** Returns `value` if it is a finite number. */
export function finite(name: string, value: number): number {
  if (Number.isFinite(value)) return value;
  throw new RangeError(`${name} must be finite, got ${value}`);
}

/** Returns `value` if it lies in [min, max], ends included. */
export function within(name: string, value: number, min: number, max: number): number {
  if (value >= min && value <= max) return value;
  throw new RangeError(`${name} must be from ${min} to ${max}, got ${value}`);
}

/** Returns `value` if it is a whole number. */
export function whole(name: string, value: number): number {
  if (Number.isInteger(value)) return value;
  throw new RangeError(`${name} must be a whole number, got ${value}`);
}
