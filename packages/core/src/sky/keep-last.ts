// Plan after plan of one shoot asks for the same day's sun and the same lens's sky: the last answer is kept.

/**
 * The same function, which does not work out again what it was asked last.
 *
 * @param make depends on its arguments alone, which are compared one by one, groups by identity
 */
export function keepLast<A extends readonly unknown[], R>(make: (...args: A) => R): (...args: A) => R {
  let last: A | undefined;
  let answer: R;
  return (...args) => {
    if (last === undefined || args.some((arg, i) => arg !== last![i])) {
      answer = make(...args);
      last = args;
    }
    return answer;
  };
}
