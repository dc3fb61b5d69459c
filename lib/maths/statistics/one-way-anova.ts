import { MathsInputError } from '../check';
import { fUpperTail } from '../distributions/f-upper-tail';
import { centred } from './centred';
import { requireValues } from './guards';

export type OneWayAnova = {
  betweenDegrees: number;
  betweenSquares: number;
  betweenMeanSquare: number;
  withinDegrees: number;
  withinSquares: number;
  withinMeanSquare: number;
  /** Ratio of the mean squares; undefined when nothing varies within the groups. */
  f: number | undefined;
  /** Chance of so large a ratio when the groups share one mean; undefined with `f`. */
  p: number | undefined;
  /** Share of the total sum of squares that lies between groups; undefined when all values are alike. */
  rSquared: number | undefined;
  /** Standard deviation within the groups. */
  residualSd: number;
};

/**
 * One-way analysis of variance: sums of squares between and within groups, and F.
 *
 * SSB = sum n_i (m_i - m)^2, SSW = sum (x_ij - m_i)^2. Values are taken relative to the first one
 * before anything is summed, so that offsets of 10^12 cost no digits. Groups may differ in size;
 * at least two groups and one group of two. Cost: O(values). Source: [strd] for the definitions.
 *
 * @throws {MathsInputError} `one-way-anova/too-few`, `one-way-anova/too-few-groups`,
 *   `one-way-anova/value`, `one-way-anova/no-repeats`
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova {
  if (groups.length < 2) {
    throw new MathsInputError(
      'one-way-anova/too-few-groups',
      `oneWayAnova requires at least two groups, got ${groups.length}`,
    );
  }
  for (const group of groups) requireValues('oneWayAnova', 'one-way-anova', group, 1);
  const n = groups.reduce((sum, group) => sum + group.length, 0);
  const withinDegrees = n - groups.length;
  if (withinDegrees === 0) {
    throw new MathsInputError(
      'one-way-anova/no-repeats',
      'oneWayAnova requires a group of two values or more, got none',
    );
  }
  const origin = groups[0]![0]!;
  const each = groups.map((group) => centred(group.map((value) => value - origin)));
  const grand = each.reduce((sum, { mean }, i) => sum + mean * groups[i]!.length, 0) / n;
  const withinSquares = each.reduce((sum, { squares }) => sum + squares, 0);
  const betweenSquares = each.reduce(
    (sum, { mean }, i) => sum + groups[i]!.length * (mean - grand) ** 2,
    0,
  );
  const betweenDegrees = groups.length - 1;
  const betweenMeanSquare = betweenSquares / betweenDegrees;
  const withinMeanSquare = withinSquares / withinDegrees;
  const total = betweenSquares + withinSquares;
  const f = withinSquares > 0 ? betweenMeanSquare / withinMeanSquare : undefined;
  return {
    betweenDegrees,
    betweenSquares,
    betweenMeanSquare,
    withinDegrees,
    withinSquares,
    withinMeanSquare,
    f,
    p: f === undefined ? undefined : fUpperTail(f, betweenDegrees, withinDegrees),
    rSquared: total > 0 ? betweenSquares / total : undefined,
    residualSd: Math.sqrt(withinMeanSquare),
  };
}
