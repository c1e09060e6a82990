/** A file or an argument is wrong, or no ramp exists: what to say, a line each, and the exit status. */
export class Refusal extends Error {
  constructor(
    readonly lines: readonly string[], // for standard error
    readonly status: 1 | 2 = 1,
  ) {
    super(lines.join('\n'));
  }
}
