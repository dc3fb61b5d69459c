import { betaPrefix } from './beta-prefix';
import { fromLower, fromUpper, type Tails } from './tails';

/**
 * The incomplete beta ratio I_x(a, b) and its complement, a and b above zero.
 *
 * `y` is 1 - x, given beside it so that neither end loses digits. Continued fraction (modified
 * Lentz) on the side where it converges; what is computed has a relative error of about 1e-14, also
 * for parameters of a million. Cost: O(sqrt(max(a, b))) near the middle. Source: [didonato-1992].
 */
export function betaTails(a: number, b: number, x: number, y: number): Tails {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (y <= 0) return { lower: 1, upper: 0 };
  const prefix = betaPrefix(a, b, x, y);
  if (x * (a + b + 2) < a + 1) return fromLower(prefix / fraction(a, b, x, y));
  return fromUpper(prefix / fraction(b, a, y, x));
}

/**
 * b0 + a1/(b1 + a2/(b2 + ... with
 * an = (a+n-1)(a+b+n-1) n (b-n) x^2 / (a+2n-1)^2,
 * bn = n + n(b-n)x/(a+2n-1) + (a+n)(1 + (a+b)y - b + n(1+y))/(a+2n+1).
 */
function fraction(a: number, b: number, x: number, y: number): number {
  // The same number twice; the smaller of x and y loses no digits in it.
  const base = x < y ? 1 + a - (a + b) * x : 1 + (a + b) * y - b;
  let value = notZero((a * base) / (a + 1));
  let c = value;
  let d = 0;
  for (let n = 1; n < 100_000; n += 1) {
    const step = a + 2 * n - 1;
    const scaled = x / step;
    const an = (a + n - 1) * (a + b + n - 1) * n * (b - n) * scaled * scaled;
    const bn = n + n * (b - n) * scaled + ((a + n) * (base + n * (1 + y))) / (step + 2);
    d = 1 / notZero(bn + an * d);
    c = notZero(bn + an / c);
    const change = c * d;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}

const notZero = (x: number) => (Math.abs(x) < 1e-300 ? 1e-300 : x);
