import { MathsInputError } from '../check';
import { expandedUncertainty } from '../metrology/expanded-uncertainty';
import { propagateUncertainty } from '../metrology/propagate-uncertainty';
import { parseFormula } from './formula';

/** What a name of the formula stands for. */
export type KnownDimension = {
  value: number;
  /** Standard uncertainty, in the unit of the value; angles of a formula "in degrees" in degrees. */
  u: number;
  /** Degrees of freedom behind u; infinite when left out. */
  degrees?: number;
};

export type DerivedDimension = {
  value: number;
  u: number;
  /** How much the result moves for one of each name. */
  sensitivities: Record<string, number>;
  /** Share of each name in u, in the unit of the result. */
  contributions: Record<string, number>;
  /** Effective degrees of freedom and U for 95 %; left out where inputs are correlated. */
  expanded?: { degrees: number; U95: number };
};

/**
 * A dimension that is not measured but worked out by a formula, with its
 * uncertainty by the law of propagation, first order.
 *
 * `known` gives each name of the formula (see parseFormula) its value and
 * standard uncertainty. Correlated pairs as [name, name, coefficient]: the same
 * micrometer for both makes most of a common error fall away in a difference.
 * U95 = t(0.975, degrees) u with degrees by Welch and Satterthwaite, not cut to
 * a whole number. A position from a face with stock still on it is `p + s`, with
 * the doubt of the stock.
 *
 * Source: [jcgm-100] 5.1.2, 5.2.2, G.4.
 *
 * @throws {MathsInputError} `formula/...`, `derived-dimension/unknown`,
 *   `derived-dimension/correlation`, and those of propagateUncertainty
 *
 * @example
 * derivedDimension('(L - w)/2', { L: { value: 42.016, u: 0.002 }, w: { value: 5.032, u: 0.0015 } });
 * // value 18.492, u 0.00125
 */
export function derivedDimension(
  text: string,
  known: Readonly<Record<string, KnownDimension>>,
  correlated: readonly (readonly [string, string, number])[] = [],
): DerivedDimension {
  const { names, evaluate } = parseFormula(text);
  const inputs = names.map((name) => {
    const input = Object.hasOwn(known, name) ? known[name] : undefined;
    if (input !== undefined) return input;
    throw new MathsInputError(
      'derived-dimension/unknown',
      `derivedDimension requires a value for each name of the formula, got none for ${name}`,
    );
  });
  const correlations = correlated.map(([a, b, coefficient]) => {
    const [first, second] = [names.indexOf(a), names.indexOf(b)];
    if (first >= 0 && second >= 0 && first !== second) return { first, second, coefficient };
    throw new MathsInputError(
      'derived-dimension/correlation',
      `derivedDimension requires correlations of two names of the formula, got ${a} and ${b}`,
    );
  });
  const found = propagateUncertainty(evaluate, inputs, { correlations });
  const byName = (values: readonly number[]) =>
    Object.fromEntries(names.map((name, i) => [name, values[i]!]));
  const { value, u, degrees } = found;
  const derived: DerivedDimension = {
    value,
    u,
    sensitivities: byName(found.sensitivities),
    contributions: byName(found.contributions),
  };
  if (degrees !== undefined && u > 0) {
    derived.expanded = { degrees, U95: expandedUncertainty(u, degrees, 0.95).expanded };
  }
  return derived;
}
