import { MathsInputError } from '../check';
import {
  add,
  divide,
  multiply,
  paired,
  squareRoot,
  subtract,
  type DoubleDouble,
} from './double-double';

export type LeastSquares = {
  /** One per column, the constant first where there is one. */
  estimates: number[];
  /** Standard deviations of the estimates. */
  standardErrors: number[];
  residuals: number[];
  residualSd: number;
  residualSquares: number;
  residualDegrees: number;
  regressionSquares: number;
  regressionDegrees: number;
  /** Share of the sum of squares explained: about the mean with a constant, about zero without. */
  rSquared: number | undefined;
  /** Ratio of the mean squares; undefined when nothing is left over. */
  f: number | undefined;
};

/**
 * Linear least squares y = X b, with or without a constant.
 *
 * Householder's QR in double-double arithmetic (about 32 digits), so that even nearly dependent
 * columns, such as the powers of a polynomial, keep the digits the data have. Residuals no larger
 * than the rounding of y count as none. Source: [golub-1965], [dekker-1971].
 *
 * `rows[i]` holds the columns of observation i, without the constant. At least one more observation
 * than coefficients. Cost: O(n k^2) double-double steps; for a straight line through many points
 * use a plain line fit.
 *
 * @throws {MathsInputError} `least-squares/shape`, `least-squares/too-few`, `least-squares/value`,
 *   `least-squares/dependent`
 *
 * @example
 * leastSquares([[1], [2], [3]], [2.1, 3.9, 6.1], { constant: true }).estimates; // [0.0333, 2]
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  { constant }: { constant: boolean },
): LeastSquares {
  const columns = checkedColumns(rows, y, constant);
  const n = y.length;
  const k = columns.length;
  const { triangle, turned } = reduced(columns, y);
  const estimates = solved(triangle, turned);
  const residuals = y.map((value, i) => {
    const fit = columns.reduce(
      (sum, column, j) => add(sum, multiply(column[i]!, estimates[j]!)),
      zero,
    );
    return subtract(paired(value), fit).high;
  });
  const isExact = residuals.every((left) => Math.abs(left) <= roundingOf(y));
  const residualSquares = isExact ? 0 : sumOfSquares(turned.slice(k)).high;
  const totalSquares = sumOfSquares(constant ? aboutMean(y) : y.map(paired)).high;
  const residualDegrees = n - k;
  const regressionDegrees = constant ? k - 1 : k;
  const regressionSquares = totalSquares - residualSquares;
  const meanSquare = residualSquares / residualDegrees;
  const hasRatio = residualSquares > 0 && regressionDegrees > 0;
  return {
    estimates: estimates.map(({ high }) => high),
    standardErrors: unitSpreads(triangle).map((spread) => spread * Math.sqrt(meanSquare)),
    residuals,
    residualSd: Math.sqrt(meanSquare),
    residualSquares,
    residualDegrees,
    regressionSquares,
    regressionDegrees,
    rSquared: totalSquares > 0 ? regressionSquares / totalSquares : undefined,
    f: hasRatio ? regressionSquares / regressionDegrees / meanSquare : undefined,
  };
}

const zero = paired(0);

function checkedColumns(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  constant: boolean,
): DoubleDouble[][] {
  const width = rows[0]?.length ?? 0;
  if (rows.length !== y.length || rows.some((row) => row.length !== width)) {
    throw new MathsInputError(
      'least-squares/shape',
      `leastSquares requires one row of ${width} for each of ${y.length} values, got ${rows.length} rows`,
    );
  }
  const coefficients = width + (constant ? 1 : 0);
  if (coefficients === 0 || y.length <= coefficients) {
    throw new MathsInputError(
      'least-squares/too-few',
      `leastSquares requires more values than coefficients, got ${y.length} for ${coefficients}`,
    );
  }
  const bad = [...rows.flat(), ...y].find((value) => !Number.isFinite(value));
  if (bad !== undefined) {
    throw new MathsInputError(
      'least-squares/value',
      `leastSquares requires finite values, got ${bad}`,
    );
  }
  const given = Array.from({ length: width }, (_, j) => rows.map((row) => paired(row[j]!)));
  return constant ? [y.map(() => paired(1)), ...given] : given;
}

/** R and Q'y of X = QR: every column is reflected onto its first open place in turn. */
function reduced(columns: readonly DoubleDouble[][], y: readonly number[]) {
  const work = columns.map((column) => [...column]);
  const turned = y.map(paired);
  work.forEach((column, j) => {
    const whole = squareRoot(sumOfSquares(columns[j]!)).high;
    const length = squareRoot(sumOfSquares(column.slice(j)));
    if (length.high <= 1e-25 * whole) {
      throw new MathsInputError(
        'least-squares/dependent',
        `leastSquares requires independent columns, got column ${j} made of the ones before it`,
      );
    }
    const top = column[j]!;
    const diagonal = top.high > 0 ? subtract(zero, length) : length;
    const mirror = [subtract(top, diagonal), ...column.slice(j + 1)];
    const size = sumOfSquares(mirror);
    for (const target of [...work.slice(j), turned]) reflect(target, j, mirror, size);
  });
  return { triangle: work, turned };
}

function reflect(
  target: DoubleDouble[],
  from: number,
  mirror: readonly DoubleDouble[],
  size: DoubleDouble,
): void {
  const along = mirror.reduce(
    (sum, value, i) => add(sum, multiply(value, target[from + i]!)),
    zero,
  );
  const twice = divide(add(along, along), size);
  mirror.forEach((value, i) => {
    target[from + i] = subtract(target[from + i]!, multiply(twice, value));
  });
}

/** Back substitution: R b = Q'y. `triangle[j][i]` is the entry of row i, column j. */
function solved(triangle: readonly DoubleDouble[][], right: readonly DoubleDouble[]) {
  const found: DoubleDouble[] = triangle.map(() => zero);
  for (let i = triangle.length - 1; i >= 0; i -= 1) {
    let rest = right[i]!;
    for (let j = i + 1; j < triangle.length; j += 1) {
      rest = subtract(rest, multiply(triangle[j]![i]!, found[j]!));
    }
    found[i] = divide(rest, triangle[i]![i]!);
  }
  return found;
}

/** Lengths of the rows of R^-1: the spread of each estimate for a residual spread of one. */
function unitSpreads(triangle: readonly DoubleDouble[][]): number[] {
  const inverse = triangle.map((_, column) =>
    solved(
      triangle,
      triangle.map((__, i) => paired(i === column ? 1 : 0)),
    ),
  );
  return triangle.map((_, i) => squareRoot(sumOfSquares(inverse.map((column) => column[i]!))).high);
}

function sumOfSquares(values: readonly DoubleDouble[]): DoubleDouble {
  return values.reduce((sum, value) => add(sum, multiply(value, value)), zero);
}

function aboutMean(y: readonly number[]): DoubleDouble[] {
  const sum = y.reduce((total, value) => add(total, paired(value)), zero);
  const mean = divide(sum, paired(y.length));
  return y.map((value) => subtract(paired(value), mean));
}

/** Two units in the last place of the largest value. */
function roundingOf(y: readonly number[]): number {
  return y.reduce((most, value) => Math.max(most, Math.abs(value)), 0) * 2 * Number.EPSILON;
}
