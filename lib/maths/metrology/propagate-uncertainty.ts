import { MathsInputError } from '../check';
import { combinedUncertainty, type Correlation } from './combined-uncertainty';
import { effectiveDegrees } from './effective-degrees';
import { sensitivities, type Model } from './sensitivities';

/** An input of a measurement model. */
export type UncertainInput = {
  value: number;
  /** Standard uncertainty, not below zero. */
  u: number;
  /** Degrees of freedom behind u; infinite when left out. */
  degrees?: number;
};

export type Propagated = {
  value: number;
  /** Combined standard uncertainty. */
  u: number;
  /** c_i, one an input. */
  sensitivities: number[];
  /** |c_i| u_i, one an input. */
  contributions: number[];
  /** Effective degrees of freedom; undefined when inputs are correlated, where the formula is not for. */
  degrees: number | undefined;
};

/**
 * The value of a model and its uncertainty by the law of propagation, first order.
 *
 * Sensitivities are worked out by `sensitivities` unless given. For a model that bends noticeably
 * within the uncertainties add `secondOrderVariance`, or use `monteCarlo`.
 * Cost: about 12 model evaluations an input. Source: [jcgm-100] 5.1, 5.2, G.4.
 *
 * @throws {MathsInputError} `propagate-uncertainty/input`, `propagate-uncertainty/model`,
 *   `propagate-uncertainty/sensitivities`, and those of `sensitivities` and `combinedUncertainty`
 *
 * @example
 * propagateUncertainty(([L, w]) => (L! - w!) / 2, [
 *   { value: 42.016, u: 0.002 }, { value: 5.032, u: 0.0015 }]); // value 18.492, u 0.00125
 */
export function propagateUncertainty(
  model: Model,
  inputs: readonly UncertainInput[],
  options: { correlations?: readonly Correlation[]; sensitivities?: readonly number[] } = {},
): Propagated {
  inputs.forEach(({ value, u }, i) => {
    if (Number.isFinite(value) && u >= 0 && u < Infinity) return;
    throw new MathsInputError(
      'propagate-uncertainty/input',
      `propagateUncertainty requires finite values and uncertainties not below zero, got ${value} and ${u} at index ${i}`,
    );
  });
  const values = inputs.map(({ value }) => value);
  const value = model(values);
  if (!Number.isFinite(value)) {
    throw new MathsInputError(
      'propagate-uncertainty/model',
      `propagateUncertainty requires a model with a value at its inputs, got ${value}`,
    );
  }
  const slopes =
    options.sensitivities ??
    sensitivities(
      model,
      values,
      inputs.map(({ u }) => u),
    );
  if (slopes.length !== inputs.length) {
    throw new MathsInputError(
      'propagate-uncertainty/sensitivities',
      `propagateUncertainty requires one sensitivity for each of ${inputs.length} inputs, got ${slopes.length}`,
    );
  }
  const signed = inputs.map(({ u }, i) => slopes[i]! * u);
  const correlations = options.correlations ?? [];
  const isIndependent = correlations.every(({ coefficient }) => coefficient === 0);
  const parts = signed.map((contribution, i) => ({
    contribution,
    degrees: inputs[i]!.degrees ?? Infinity,
  }));
  return {
    value,
    u: combinedUncertainty(signed, correlations),
    sensitivities: [...slopes],
    contributions: signed.map(Math.abs),
    degrees: isIndependent ? effectiveDegrees(parts) : undefined,
  };
}
