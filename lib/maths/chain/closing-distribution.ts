import { MathsInputError } from '../check';
import { normalCdf } from '../distributions/normal-cdf';
import { normalPdf } from '../distributions/normal-pdf';

/** A member of a chain as a distribution about its centre. */
export type UncertainLink = {
  coefficient: number;
  centre: number;
  /** A piece to be made is rectangular unless a process is known; a measured one is normal. */
  shape: 'rectangular' | 'triangular' | 'normal';
  /** Half width of a rectangle or triangle, standard uncertainty of a normal, above zero. */
  half: number;
};

export type ClosingDistribution = {
  mean: number;
  sd: number;
  /** Part of each link in the variance, percent. */
  sharePercent: number[];
  /** Probability that the closing link is at most x. */
  cdf: (x: number) => number;
  /** The value that the closing link stays below with probability p, 0 < p < 1. */
  quantile: (p: number) => number;
};

/**
 * Distribution of the closing link of a chain whose links are independent and
 * rectangular, triangular or normal: no draws, no assumption that the sum is normal.
 *
 * A triangle is two rectangles of half the width, and all normals are one. With
 * one rectangle the distribution has a closed form; with more it is the Fourier
 * series of the product of sin(at)/(at) and exp(-s^2 t^2/2) on a period as wide
 * as the sum can be (nine standard deviations of the normal part).
 *
 * Probabilities are good to about 1e-9, quantiles to about 1e-8 of the width.
 * Any one unit of length.
 *
 * Cost: some thousand terms a probability, some fifty probabilities a quantile;
 * more when one rectangle dwarfs all the rest. Source: characteristic functions
 * [feller-2]; [jcgm-101] for the shapes.
 *
 * @throws {MathsInputError} `closing-distribution/no-link`, `.../link`, `.../value`, `.../chance`
 *
 * @example
 * closingDistribution(links).quantile(0.99865); // what 99.865 % of all chains stay below
 */
export function closingDistribution(links: readonly UncertainLink[]): ClosingDistribution {
  requireUncertain(links);
  const variances = links.map(({ coefficient, shape, half }) => {
    const spread = coefficient * half;
    return (spread * spread) / { normal: 1, rectangular: 3, triangular: 6 }[shape];
  });
  const variance = variances.reduce((sum, one) => sum + one, 0);
  const mean = links.reduce((sum, link) => sum + link.coefficient * link.centre, 0);
  const { centred, reach } = centredCdf(links);
  const cdf = (x: number) => {
    if (!Number.isNaN(x)) return centred(x - mean);
    throw new MathsInputError(
      'closing-distribution/value',
      `closingDistribution requires a number, got ${x}`,
    );
  };
  return {
    mean,
    sd: Math.sqrt(variance),
    sharePercent: variances.map((one) => (100 * one) / variance),
    cdf,
    quantile: (p) => mean + halved(centred, reach, p),
  };
}

function centredCdf(links: readonly UncertainLink[]): {
  centred: (y: number) => number;
  reach: number;
} {
  const widths: number[] = [];
  const normals: number[] = [];
  for (const { coefficient, shape, half } of links) {
    const spread = Math.abs(coefficient * half);
    if (shape === 'normal') normals.push(spread);
    else if (shape === 'rectangular') widths.push(spread);
    else widths.push(spread / 2, spread / 2);
  }
  const sd = Math.hypot(...normals);
  const reach = widths.reduce((sum, width) => sum + width, 0) + 9 * sd;
  const within = (of: (y: number) => number) => (y: number) => {
    if (y <= -reach) return 0;
    return y >= reach ? 1 : Math.min(1, Math.max(0, of(y)));
  };
  if (widths.length === 0) return { centred: within((y) => normalCdf(y / sd)), reach };
  if (widths.length === 1) return { centred: within(oneRectangle(widths[0]!, sd)), reach };
  return { centred: within(fourierCdf(widths, sd, reach)), reach };
}

/** One rectangle and a normal: the mean of the normal distribution function over the rectangle. */
function oneRectangle(width: number, sd: number): (y: number) => number {
  if (sd === 0) return (y) => (y + width) / (2 * width);
  const integral = (z: number) => z * normalCdf(z) + normalPdf(z);
  return (y) => (sd / (2 * width)) * (integral((y + width) / sd) - integral((y - width) / sd));
}

/**
 * F(y) = 1/2 + y/(2r) + (1/pi) sum phi(pi k/r)/k sin(pi k y/r) for a symmetrical sum that keeps
 * within r. Terms are kept until what is left out is below 1e-11.
 */
function fourierCdf(widths: readonly number[], sd: number, reach: number): (y: number) => number {
  const terms: number[] = [];
  const [first, second] = widths.toSorted((a, b) => b - a) as [number, number];
  for (let k = 1; k <= 400_000; k += 1) {
    const t = (Math.PI * k) / reach;
    const normal = Math.exp((-(sd * t) * (sd * t)) / 2);
    const product = widths.reduce(
      (phi, width) => (phi * Math.sin(width * t)) / (width * t),
      normal,
    );
    terms.push(product / (Math.PI * k));
    if (normal * Math.min(1, 1 / (first * t)) * Math.min(1, 1 / (second * t)) < 1e-11) break;
  }
  return (y) => {
    // Sines of equal steps by the recurrence of Clenshaw, from the smallest term up.
    const step = (Math.PI * y) / reach;
    const twice = 2 * Math.cos(step);
    let [last, beforeLast] = [0, 0];
    for (let k = terms.length - 1; k >= 0; k -= 1) {
      [last, beforeLast] = [terms[k]! + twice * last - beforeLast, last];
    }
    return 0.5 + y / (2 * reach) + last * Math.sin(step);
  };
}

/** Where a rising function reaches p, by halving. */
function halved(cdf: (y: number) => number, reach: number, p: number): number {
  if (!(p > 0 && p < 1)) {
    throw new MathsInputError(
      'closing-distribution/chance',
      `closingDistribution requires a chance above 0 and below 1, got ${p}`,
    );
  }
  let [low, high] = [-reach, reach];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (cdf(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function requireUncertain(links: readonly UncertainLink[]): void {
  if (links.length === 0) {
    throw new MathsInputError(
      'closing-distribution/no-link',
      'closingDistribution requires at least one link, got none',
    );
  }
  links.forEach(({ coefficient, centre, half }, i) => {
    const finite = [coefficient, centre, half].every(Number.isFinite);
    if (finite && coefficient !== 0 && half > 0) return;
    throw new MathsInputError(
      'closing-distribution/link',
      `closingDistribution requires a coefficient other than zero and a half above zero, got ${coefficient} and ${half} at link ${i}`,
    );
  });
}
