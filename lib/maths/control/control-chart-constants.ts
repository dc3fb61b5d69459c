import { c4 as meanSpread } from './c4';
import { requirePositive } from './guards';
import { rangeMoments } from './range-moments';

export type ControlChartConstants = {
  /** Mean of s; mean of the range; standard deviation of the range; all for sigma 1. */
  c4: number;
  d2: number;
  d3: number;
  /** Limits of a mean from a known sigma, from the mean range and from the mean s. */
  A: number;
  A2: number;
  A3: number;
  /** Limits of s from the mean s (B3, B4) and from a known sigma (B5, B6). */
  B3: number;
  B4: number;
  B5: number;
  B6: number;
  /** Limits of a range from a known sigma (D1, D2) and from the mean range (D3, D4). */
  D1: number;
  D2: number;
  D3: number;
  D4: number;
  /** Limits of single values from the mean range. */
  E2: number;
};

/**
 * The factors of control charts for subgroups of n with limits at k sigma, 3 by custom, unrounded.
 *
 *     A = k / sqrt n, A2 = k / (d2 sqrt n), A3 = k / (c4 sqrt n), E2 = k / d2
 *     B3, B4 = 1 -+ k sqrt(1 - c4^2) / c4,  B5, B6 = c4 -+ k sqrt(1 - c4^2)
 *     D1, D2 = d2 -+ k d3,  D3, D4 = 1 -+ k d3 / d2;  none of them below zero
 *
 * Limits: n from 2 to 100, k above zero; normal, independent readings. Good to about 1e-12. Printed tables differ
 * in the last digit. Cost: that of `rangeMoments`. Sources: [iso-7870-2], [astm-e2587].
 *
 * @throws {MathsInputError} `c4/not-whole`, `control-chart-constants/not-positive`
 *
 * @example
 * controlChartConstants(5).A2; // 0.576819...
 */
export function controlChartConstants(n: number, multiple = 3): ControlChartConstants {
  requirePositive('controlChartConstants', 'multiple of sigma', multiple);
  const c4 = meanSpread(n);
  const { d2, d3 } = rangeMoments(n);
  const root = Math.sqrt(n);
  const spreadOfS = multiple * Math.sqrt(1 - c4 * c4);
  return {
    c4,
    d2,
    d3,
    A: multiple / root,
    A2: multiple / (d2 * root),
    A3: multiple / (c4 * root),
    B3: Math.max(0, 1 - spreadOfS / c4),
    B4: 1 + spreadOfS / c4,
    B5: Math.max(0, c4 - spreadOfS),
    B6: c4 + spreadOfS,
    D1: Math.max(0, d2 - multiple * d3),
    D2: d2 + multiple * d3,
    D3: Math.max(0, 1 - (multiple * d3) / d2),
    D4: 1 + (multiple * d3) / d2,
    E2: multiple / d2,
  };
}
