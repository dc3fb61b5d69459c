/** Both sides of a distribution at one place; the smaller one keeps its relative precision. */
export type Tails = { lower: number; upper: number };

/** Tails when the lower one was computed. */
export function fromLower(lower: number): Tails {
  return { lower, upper: 1 - lower };
}

/** Tails when the upper one was computed. */
export function fromUpper(upper: number): Tails {
  return { lower: 1 - upper, upper };
}
