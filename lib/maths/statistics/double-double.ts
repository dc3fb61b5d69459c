/** An unevaluated sum of two doubles, about 32 digits: `high` is the sum rounded to double. */
export type DoubleDouble = { high: number; low: number };

/** The exact sum of two doubles. Source: [dekker-1971]. */
export function exactSum(a: number, b: number): DoubleDouble {
  const high = a + b;
  const part = high - a;
  return { high, low: a - (high - part) + (b - part) };
}

/** The exact product of two doubles, by splitting each into halves. Source: [dekker-1971]. */
export function exactProduct(a: number, b: number): DoubleDouble {
  const high = a * b;
  const aHigh = a * 134217729 - (a * 134217729 - a);
  const bHigh = b * 134217729 - (b * 134217729 - b);
  const [aLow, bLow] = [a - aHigh, b - bHigh];
  return { high, low: aLow * bLow - (high - aHigh * bHigh - aLow * bHigh - aHigh * bLow) };
}

/** a + b. */
export function add(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const sum = exactSum(a.high, b.high);
  return exactSum(sum.high, sum.low + a.low + b.low);
}

/** a - b. */
export function subtract(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  return add(a, { high: -b.high, low: -b.low });
}

/** a x b. */
export function multiply(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const product = exactProduct(a.high, b.high);
  return exactSum(product.high, product.low + (a.high * b.low + a.low * b.high));
}

/** a / b, b not zero. */
export function divide(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const first = a.high / b.high;
  const rest = subtract(a, multiply(b, { high: first, low: 0 }));
  const second = rest.high / b.high;
  const left = subtract(rest, multiply(b, { high: second, low: 0 }));
  return add(exactSum(first, second), { high: left.high / b.high, low: 0 });
}

/** Square root of a number not below zero, one Newton step from the double. */
export function squareRoot(a: DoubleDouble): DoubleDouble {
  if (a.high <= 0) return { high: 0, low: 0 };
  const root = Math.sqrt(a.high);
  const rest = subtract(a, exactProduct(root, root));
  return exactSum(root, rest.high / (2 * root));
}

/** A double as a pair. */
export function paired(high: number): DoubleDouble {
  return { high, low: 0 };
}
