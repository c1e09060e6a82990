// The innermost loops of the solver: a row of costs made cheaper by way of other rows.

/** target = min(target, source + price), over `count` neighbours. */
export function relax(
  target: Float64Array,
  targetAt: number,
  source: Float64Array,
  sourceAt: number,
  count: number,
  price: number,
): void {
  for (let i = 0; i < count; i++) {
    const through = source[sourceAt + i] + price;
    if (through < target[targetAt + i]) target[targetAt + i] = through;
  }
}

/** The same by two ways at once, from two places of the same source. */
export function relaxBoth(
  target: Float64Array,
  targetAt: number,
  source: Float64Array,
  firstAt: number,
  secondAt: number,
  count: number,
  firstPrice: number,
  secondPrice: number,
): void {
  for (let i = 0; i < count; i++) {
    let least = target[targetAt + i];
    const first = source[firstAt + i] + firstPrice;
    const second = source[secondAt + i] + secondPrice;
    if (first < least) least = first;
    if (second < least) least = second;
    target[targetAt + i] = least;
  }
}
