import { refuse, requireFinite, requireLimits } from './guards';

export type PercentileInput = {
  /** Size below which the small share lies (0.135 % in ISO 22514-2), middle one, and its mirror. */
  low: number;
  median: number;
  high: number;
  /** At least one of the two. */
  lower?: number;
  upper?: number;
};

export type PercentileCapability = {
  /** Only with both limits. */
  pp?: number;
  ppkUpper?: number;
  ppkLower?: number;
  /** The smaller of the two, or the only one. */
  ppk: number;
};

/**
 * Capability of a process that is not normal, from three of its percentiles.
 *
 *     Pp = (U - L) / (X_high - X_low),  PpkU = (U - X_50) / (X_high - X_50),
 *     PpkL = (X_50 - L) / (X_50 - X_low)
 *
 * ISO 22514-2 takes 0.135 % and 99.865 %, the e-Handbook's Cnpk 0.5 % and 99.5 %: do not mix them.
 *
 * Limits: the outer percentiles have to come from a distribution that fits; read off a few dozen
 * pieces they are guesses. Cost: O(1). Sources: [iso-22514-2], [nist-handbook] 6.1.6.
 *
 * @throws {MathsInputError} `percentile-capability/not-finite`, `percentile-capability/percentiles`,
 *   `percentile-capability/limits`
 *
 * @example
 * percentileCapability({ low: 9.97, median: 10, high: 10.03, lower: 9.95, upper: 10.04 }).pp; // 1.5
 */
export function percentileCapability(input: PercentileInput): PercentileCapability {
  const { low, median, high, lower, upper } = input;
  requireFinite('percentileCapability', 'percentiles', [low, median, high]);
  if (!(low < median && median < high)) {
    const got = `${low}, ${median} and ${high}`;
    throw refuse('percentileCapability', 'percentiles', `three increasing percentiles, got ${got}`);
  }
  for (const limit of [lower, upper]) {
    if (limit !== undefined) requireFinite('percentileCapability', 'limits', [limit]);
  }
  if (lower === undefined && upper === undefined) {
    throw refuse('percentileCapability', 'limits', 'at least one limit, got none');
  }
  const sides = {
    ...(upper !== undefined && { ppkUpper: (upper - median) / (high - median) }),
    ...(lower !== undefined && { ppkLower: (median - lower) / (median - low) }),
  };
  const ppk = Math.min(sides.ppkUpper ?? Infinity, sides.ppkLower ?? Infinity);
  if (lower === undefined || upper === undefined) return { ...sides, ppk };
  requireLimits('percentileCapability', lower, upper);
  return { ...sides, ppk, pp: (upper - lower) / (high - low) };
}
