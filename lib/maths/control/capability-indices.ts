import { normalCdf } from '../distributions/normal-cdf';
import { refuse, requireFinite, requireLimits, requirePositive } from './guards';

export type CapabilityInput = {
  /** Middle and spread of the process, and what it must keep to, all in one unit. */
  mean: number;
  sigma: number;
  /** At least one of the two. */
  lower?: number;
  upper?: number;
  /** Best size, for Cpm; needs both limits. */
  target?: number;
};

export type CapabilityIndices = {
  /** Tolerance over six sigma; only with both limits, like `offCentre` and `cpm`. */
  cp?: number;
  cpkUpper?: number;
  cpkLower?: number;
  /** The smaller of the two, or the only one. */
  cpk: number;
  /** Distance of the mean from the middle, as a share of half the tolerance. */
  offCentre?: number;
  cpm?: number;
  /** Share of pieces beyond each limit, if sizes are normal; 0 where there is no limit. */
  fractionAbove: number;
  fractionBelow: number;
};

/**
 * Capability indices of a normal process whose mean and sigma are known.
 *
 *     Cp = (U - L) / (6 sigma),  CpkU = (U - mean) / (3 sigma),  CpkL = (mean - L) / (3 sigma)
 *     k = |mean - (U + L) / 2| / ((U - L) / 2),  Cpm = (U - L) / (6 sqrt(sigma^2 + (mean - T)^2))
 *
 * With sigma from a chart they are called Cp and Cpk, with the standard deviation of all pieces Pp and
 * Ppk. Below zero the mean itself is outside.
 *
 * Limits: figures from few pieces, a drifting run or a coarse gauge mean nothing; `runCapability` says
 * so. Cost: O(1). Sources: [iso-22514-2], [nist-handbook] 6.1.6.
 *
 * @throws {MathsInputError} `capability-indices/not-finite`, `capability-indices/not-positive`,
 *   `capability-indices/limits`
 *
 * @example
 * capabilityIndices({ mean: 16, sigma: 2, lower: 8, upper: 20 }).cpk; // ~ 0.6667
 */
export function capabilityIndices(input: CapabilityInput): CapabilityIndices {
  const { mean, sigma, lower, upper, target } = input;
  requireFinite('capabilityIndices', 'mean', [mean]);
  requirePositive('capabilityIndices', 'sigma', sigma);
  if (target !== undefined) requireFinite('capabilityIndices', 'target', [target]);
  for (const limit of [lower, upper]) {
    if (limit !== undefined) requireFinite('capabilityIndices', 'limits', [limit]);
  }
  if (lower === undefined && upper === undefined) {
    throw refuse('capabilityIndices', 'limits', 'at least one limit, got none');
  }

  const sides = {
    ...(upper !== undefined && { cpkUpper: (upper - mean) / (3 * sigma) }),
    ...(lower !== undefined && { cpkLower: (mean - lower) / (3 * sigma) }),
    fractionAbove: upper === undefined ? 0 : normalCdf((mean - upper) / sigma),
    fractionBelow: lower === undefined ? 0 : normalCdf((lower - mean) / sigma),
  };
  const cpk = Math.min(sides.cpkUpper ?? Infinity, sides.cpkLower ?? Infinity);
  if (lower === undefined || upper === undefined) return { ...sides, cpk };

  requireLimits('capabilityIndices', lower, upper);
  const width = upper - lower;
  return {
    ...sides,
    cpk,
    cp: width / (6 * sigma),
    offCentre: Math.abs(mean - lower - width / 2) / (width / 2),
    ...(target !== undefined && { cpm: width / (6 * Math.hypot(sigma, mean - target)) }),
  };
}
