// What holding one exposure over many frames costs, by a formula instead of a sum.

/** Prefix sums of the centred targets and of their squares. */
export class HeldErrors {
  private readonly mean: number;
  private readonly first: Float64Array;
  private readonly second: Float64Array;

  constructor(target: Float64Array) {
    this.mean = target.reduce((sum, ev) => sum + ev, 0) / target.length;
    this.first = new Float64Array(target.length + 1);
    this.second = new Float64Array(target.length + 1);
    for (let i = 0; i < target.length; i++) {
      const centred = target[i] - this.mean; // large sums of squares would lose digits
      this.first[i + 1] = this.first[i] + centred;
      this.second[i + 1] = this.second[i] + centred * centred;
    }
  }

  /** Sum over frames from…to-1 of (exposure - target)². */
  sum(exposureEv: number, from: number, to: number): number {
    const e = exposureEv - this.mean;
    const first = this.first[to] - this.first[from];
    const second = this.second[to] - this.second[from];
    return Math.max(0, (to - from) * e * e - 2 * e * first + second); // cancellation can leave a hair below zero
  }
}
