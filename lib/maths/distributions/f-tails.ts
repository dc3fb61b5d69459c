import { betaTails } from './beta-tails';
import type { Tails } from './tails';

/** Both tails of F at x: I_(ax/(ax+b))(a/2, b/2) and its complement, x above zero. */
export function fTails(x: number, above: number, below: number): Tails {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const scaled = (above / below) * x;
  return betaTails(above / 2, below / 2, scaled / (1 + scaled), 1 / (1 + scaled));
}
