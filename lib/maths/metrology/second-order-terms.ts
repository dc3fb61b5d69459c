import { MathsInputError } from '../check';
import type { Model } from './sensitivities';

/** What a pair of inputs adds to the variance beyond the first order; a pair may be an input with itself. */
export type SecondOrderTerm = { first: number; second: number; variance: number };

/**
 * Second-order terms of the law of propagation for independent inputs, pair by pair:
 * sum_ij [ (1/2) f_ij^2 + f_i f_ijj ] u_i^2 u_j^2, the two orders of a pair put together.
 *
 * The derivatives are differences over one standard uncertainty to each side, which is the range that
 * matters. A variance may be below zero. Only pairs with both uncertainties above zero are listed.
 * Cost: O(inputs^2) model evaluations. Source: [jcgm-100] 5.1.2, note.
 *
 * @throws {MathsInputError} `second-order-terms/shape`, `second-order-terms/model`
 */
export function secondOrderTerms(
  model: Model,
  values: readonly number[],
  uncertainties: readonly number[],
): SecondOrderTerm[] {
  if (values.length !== uncertainties.length) {
    throw new MathsInputError(
      'second-order-terms/shape',
      `secondOrderTerms requires one uncertainty for each of ${values.length} inputs, got ${uncertainties.length}`,
    );
  }
  const moved = (i: number, a: number, j: number, b: number) => {
    const at = [...values];
    at[i]! += a * uncertainties[i]!;
    at[j]! += b * uncertainties[j]!;
    const value = model(at);
    if (Number.isFinite(value)) return value;
    throw new MathsInputError(
      'second-order-terms/model',
      `secondOrderTerms requires a model with a value one uncertainty around its inputs, got ${value} near input ${i}`,
    );
  };
  const active = values.map((_, i) => i).filter((i) => uncertainties[i]! > 0);
  return active.flatMap((first, place) =>
    active.slice(place).map((second) => ({
      first,
      second,
      variance: first === second ? alone(moved, first) : together(moved, first, second),
    })),
  );
}

/** A model moved by a of u_i and b of u_j. */
type Moved = (i: number, a: number, j: number, b: number) => number;

/** (1/2) f_ii^2 u^4 + f_i f_iii u^4, in units of u. */
function alone(moved: Moved, i: number): number {
  const at = (steps: number) => moved(i, steps, i, 0);
  const slope = (8 * (at(1) - at(-1)) - (at(2) - at(-2))) / 12;
  const bend = at(1) - 2 * at(0) + at(-1);
  const twist = (at(2) - 2 * at(1) + 2 * at(-1) - at(-2)) / 2;
  return 0.5 * bend * bend + slope * twist;
}

/** f_ij^2 + f_i f_ijj + f_j f_jii, in units of u_i and u_j. */
function together(moved: Moved, i: number, j: number): number {
  const at = (a: number, b: number) => moved(i, a, j, b);
  const cross = (at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / 4;
  const slopeI = (at(1, 0) - at(-1, 0)) / 2;
  const slopeJ = (at(0, 1) - at(0, -1)) / 2;
  const bendJ = (a: number) => bendOf(at(a, 1), at(a, 0), at(a, -1));
  const bendI = (b: number) => bendOf(at(1, b), at(0, b), at(-1, b));
  const twistIJJ = (bendJ(1) - bendJ(-1)) / 2;
  const twistJII = (bendI(1) - bendI(-1)) / 2;
  return cross * cross + slopeI * twistIJJ + slopeJ * twistJII;
}

const bendOf = (plus: number, middle: number, minus: number) => plus - 2 * middle + minus;
