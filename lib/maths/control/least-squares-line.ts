import { mean } from '../statistics/mean';
import { refuse, requireAtLeast, requireFinite } from './guards';

/** A straight line y = meanY + slope (x - meanX) fitted to readings, and what its doubt is made of. */
export type Line = {
  /** Number of readings, n. */
  count: number;
  /** Middle of the readings; the line passes through it. In units of x and of y. */
  meanX: number;
  meanY: number;
  /** Units of y per unit of x. */
  slope: number;
  /** Height of the line at x = 0. Far from the readings it is rounded: ask `lineAt` instead. */
  intercept: number;
  /** Scatter of the readings about the line, units of y, with n - 2 degrees of freedom. */
  residualSd: number;
  degreesOfFreedom: number;
  slopeSe: number;
  interceptSe: number;
  /** Sums of squares about the means, units squared. */
  sumSquaresX: number;
  sumSquaresY: number;
};

/**
 * Least-squares straight line of y on x.
 *
 *     slope = Sxy / Sxx,  intercept = yb - slope xb,  s^2 = sum (y - line)^2 / (n - 2)
 *     se(slope) = s / sqrt Sxx,  se(intercept) = s sqrt(1/n + xb^2 / Sxx)
 *
 * The first reading is taken off before the means are, and the sums are taken about the means, so
 * that neither a clock in milliseconds nor a nominal of a metre costs digits, and readings that are
 * all the same give a slope and a scatter of exactly zero.
 *
 * Limits: only y is in doubt and equally everywhere; a tool that chips or a bar that warms does not
 * move along a straight line, so look at the readings as well. Cost: O(n). Source: [draper-smith].
 *
 * @throws {MathsInputError} `least-squares-line/too-few`, `least-squares-line/lengths`,
 *   `least-squares-line/not-finite`, `least-squares-line/one-x`
 *
 * @example
 * leastSquaresLine([1, 2, 3], [0.001, 0.002, 0.003]); // slope ~ 0.001, residualSd ~ 0
 */
export function leastSquaresLine(x: readonly number[], y: readonly number[]): Line {
  requireAtLeast('leastSquaresLine', 'readings', x.length, 3);
  if (y.length !== x.length) {
    throw refuse(
      'leastSquaresLine',
      'lengths',
      `one y for each x, got ${x.length} and ${y.length}`,
    );
  }
  requireFinite('leastSquaresLine', 'x', x);
  requireFinite('leastSquaresLine', 'y', y);

  const count = x.length;
  const [fromX, offX] = centred(x);
  const [fromY, offY] = centred(y);
  const sumSquaresX = sumOfProducts(offX, offX);
  if (!(sumSquaresX > 0)) {
    throw refuse('leastSquaresLine', 'one-x', `two or more different x, got only ${x[0]}`);
  }
  const slope = sumOfProducts(offX, offY) / sumSquaresX;
  const residuals = offY.map((value, i) => value - slope * offX[i]!);
  const degreesOfFreedom = count - 2;
  const residualSd = Math.sqrt(sumOfProducts(residuals, residuals) / degreesOfFreedom);
  return {
    count,
    meanX: fromX,
    meanY: fromY,
    slope,
    intercept: fromY - slope * fromX,
    residualSd,
    degreesOfFreedom,
    slopeSe: residualSd / Math.sqrt(sumSquaresX),
    interceptSe: residualSd * Math.sqrt(1 / count + (fromX * fromX) / sumSquaresX),
    sumSquaresX,
    sumSquaresY: sumOfProducts(offY, offY),
  };
}

/** The mean, and every value less the mean, worked from the first value so that big offsets cancel. */
function centred(values: readonly number[]): [middle: number, off: number[]] {
  const first = values[0]!;
  const fromFirst = values.map((value) => value - first);
  const middle = mean(fromFirst);
  return [first + middle, fromFirst.map((value) => value - middle)];
}

function sumOfProducts(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}
