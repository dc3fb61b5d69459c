import { MathsInputError } from '../check';
import { integral } from '../distributions/integral';
import { normalCdf } from '../distributions/normal-cdf';
import { normalPdf } from '../distributions/normal-pdf';

export type RiskInputs = {
  /** Limits of the size. */
  lower: number;
  upper: number;
  /** Limits the reading is held to. */
  acceptLower: number;
  acceptUpper: number;
  /** What the process makes: mean and standard deviation. */
  processMean: number;
  processSd: number;
  /** Standard uncertainty of a measurement. */
  u: number;
};

export type GlobalRisks = {
  /** Share of pieces inside the limits. */
  conforming: number;
  /** Share that is outside and accepted. */
  consumer: number;
  /** Share that is inside and refused. */
  producer: number;
};

/**
 * Shares of a normal process that are wrongly accepted and wrongly refused, measured with normal errors.
 *
 * Consumer: integral of g(x) Pr(accept | x) outside the limits; producer: of g(x) Pr(refuse | x)
 * inside. Relative error about 1e-10. Cost: a few thousand normal probabilities. Source: [jcgm-106] 9.5.
 *
 * @throws {MathsInputError} `global-risks/limits`, `global-risks/spread`
 *
 * @example
 * globalRisks({ lower: 1499.8, upper: 1500.2, acceptLower: 1499.82, acceptUpper: 1500.18,
 *   processMean: 1500, processSd: 0.12, u: 0.04 }); // consumer 0.00988, producer 0.0690
 */
export function globalRisks(given: RiskInputs): GlobalRisks {
  const { lower, upper, acceptLower, acceptUpper, processMean, processSd, u } = given;
  if (!(lower < upper && acceptLower <= acceptUpper)) {
    throw new MathsInputError(
      'global-risks/limits',
      `globalRisks requires limits in order, got ${lower} to ${upper} and ${acceptLower} to ${acceptUpper}`,
    );
  }
  if (!(processSd > 0 && processSd < Infinity && u > 0 && u < Infinity)) {
    throw new MathsInputError(
      'global-risks/spread',
      `globalRisks requires spreads above zero, got ${processSd} and ${u}`,
    );
  }
  const density = (x: number) => normalPdf((x - processMean) / processSd) / processSd;
  const accepted = (x: number) => between((acceptLower - x) / u, (acceptUpper - x) / u);
  const refused = (x: number) =>
    normalCdf((acceptLower - x) / u) + normalCdf((x - acceptUpper) / u);
  const reach = 12 * processSd;
  const over = (curve: (x: number) => number, from: number, to: number) =>
    inPanels(curve, Math.max(from, processMean - reach), Math.min(to, processMean + reach), [
      acceptLower,
      acceptUpper,
      ...[-8, -2, 2, 8].flatMap((k) => [acceptLower + k * u, acceptUpper + k * u]),
      ...[-4, -1, 1, 4].map((k) => processMean + k * processSd),
    ]);
  const bad = (x: number) => density(x) * accepted(x);
  const good = (x: number) => density(x) * refused(x);
  return {
    conforming: between((lower - processMean) / processSd, (upper - processMean) / processSd),
    consumer: over(bad, -Infinity, lower) + over(bad, upper, Infinity),
    producer: over(good, lower, upper),
  };
}

/** Normal probability between two places, in the tail that is small. */
function between(low: number, high: number): number {
  return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
}

/** Integral cut where the integrand bends. */
function inPanels(
  curve: (x: number) => number,
  from: number,
  to: number,
  cuts: readonly number[],
): number {
  if (!(from < to)) return 0;
  const inner = cuts.filter((cut) => cut > from && cut < to).sort((a, b) => a - b);
  const ends = [from, ...inner, to];
  return ends
    .slice(1)
    .reduce((sum, end, i) => sum + (end > ends[i]! ? integral(curve, ends[i]!, end, 1e-11) : 0), 0);
}
