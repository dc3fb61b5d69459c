import { gammaPrefix } from './gamma-prefix';
import { fromLower, fromUpper, type Tails } from './tails';

/**
 * The incomplete gamma ratios P(a, x) and Q(a, x), a above zero, x not below zero.
 *
 * Series below a + 1, continued fraction above (modified Lentz); the one that is computed has a
 * relative error of about 1e-14. Cost: O(sqrt(a)) near the middle. Source: [dlmf] 8.11.4, 8.9.2.
 */
export function gammaTails(a: number, x: number): Tails {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const prefix = gammaPrefix(a, x);
  return x < a + 1 ? fromLower(prefix * series(a, x)) : fromUpper(prefix * fraction(a, x));
}

/** 1/a + x/(a(a+1)) + ... */
function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; term > sum * 1e-17; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** 1/(x+1-a- 1(1-a)/(x+3-a- 2(2-a)/(x+5-a- ... */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 100_000; n += 1) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / (an * d + b);
    c = b + an / c;
    const change = c * d;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}
