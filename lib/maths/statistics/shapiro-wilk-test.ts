import { MathsInputError } from '../check';
import { normalCdf } from '../distributions/normal-cdf';
import { normalQuantile } from '../distributions/normal-quantile';
import { centred } from './centred';
import { requireSpread, requireValues } from './guards';

/**
 * Shapiro-Wilk test of normality with Royston's weights and p, 3 to 5000 values.
 *
 * W = (sum a_i x_(i))^2 / sum (x - m)^2. A small p says the values are hardly from one normal
 * population; a large one does not say that they are. Ties from a coarse resolution lower p.
 * W is good to about 1e-6 and p to two or three figures, as the approximation is.
 * Cost: O(n log n). Source: [royston-1995].
 *
 * @throws {MathsInputError} `shapiro-wilk-test/too-few`, `shapiro-wilk-test/too-many`,
 *   `shapiro-wilk-test/value`, `shapiro-wilk-test/no-spread`
 */
export function shapiroWilkTest(values: ArrayLike<number>): { w: number; p: number } {
  requireValues('shapiroWilkTest', 'shapiro-wilk-test', values, 3);
  const n = values.length;
  if (n > 5000) {
    throw new MathsInputError(
      'shapiro-wilk-test/too-many',
      `shapiroWilkTest requires at most 5000 values, got ${n}`,
    );
  }
  const sorted = Float64Array.from(values).sort();
  const { mean, squares } = centred(sorted);
  requireSpread('shapiroWilkTest', 'shapiro-wilk-test', squares);
  const weights = weightsFor(n);
  let along = 0;
  weights.forEach((weight, i) => {
    along += weight * (sorted[n - 1 - i]! - mean - (sorted[i]! - mean));
  });
  const w = Math.min(1, (along * along) / squares);
  return { w, p: n === 3 ? exactOfThree(w) : chanceOf(w, n) };
}

/** Weights of the largest, the second largest ..., down to the middle; the others mirror them. */
function weightsFor(n: number): number[] {
  const half = n >> 1;
  if (n === 3) return [Math.SQRT1_2];
  const m = Array.from({ length: half }, (_, i) => normalQuantile((i + 1 - 0.375) / (n + 0.25)));
  const sum = 2 * m.reduce((total, value) => total + value * value, 0);
  const root = 1 / Math.sqrt(n);
  const first = polynomial(root, firstWeight) - m[0]! / Math.sqrt(sum);
  const second = polynomial(root, secondWeight) - (m[1] ?? 0) / Math.sqrt(sum);
  const ends = n > 5 ? 2 : 1;
  const taken = ends === 2 ? first * first + second * second : first * first;
  const left = sum - 2 * m.slice(0, ends).reduce((total, value) => total + value * value, 0);
  const scale = Math.sqrt(left / (1 - 2 * taken));
  return m.map((value, i) => (i >= ends ? -value / scale : i === 0 ? first : second));
}

function exactOfThree(w: number): number {
  return Math.max(0, (6 / Math.PI) * (Math.asin(Math.sqrt(w)) - Math.PI / 3));
}

function chanceOf(w: number, n: number): number {
  if (w === 1) return 1;
  const y = Math.log(1 - w);
  if (n <= 11) {
    const edge = polynomial(n, smallEdge);
    if (y >= edge) return 0;
    const mean = polynomial(n, smallMean);
    return normalCdf((mean + Math.log(edge - y)) / Math.exp(polynomial(n, smallSpread)));
  }
  const log = Math.log(n);
  return normalCdf((polynomial(log, largeMean) - y) / Math.exp(polynomial(log, largeSpread)));
}

/** Coefficients from the constant up. */
function polynomial(x: number, coefficients: readonly number[]): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

const firstWeight = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
const secondWeight = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];
const smallEdge = [-2.273, 0.459];
const smallMean = [0.544, -0.39978, 0.025054, -6.714e-4];
const smallSpread = [1.3822, -0.77857, 0.062767, -0.0020322];
const largeMean = [-1.5861, -0.31082, -0.083751, 0.0038915];
const largeSpread = [-0.4803, -0.082676, 0.0030302];
