import { MathsInputError } from '../check';
import type { Distribution } from './distribution';
import type { Random } from './seeded-random';

/**
 * A source of draws from a distribution, fed by a random sequence.
 *
 * Normal draws by the polar method, chi-square for t by Marsaglia and Tsang, the others directly from
 * one or two rectangular numbers. Cost: O(1) a draw. Source: [jcgm-101] 6.4, [marsaglia-tsang-2000].
 *
 * @throws {MathsInputError} `sampler/parameters`
 */
export function sampler(distribution: Distribution, random: Random): () => number {
  requireParameters(distribution);
  if (distribution.shape === 'normal') {
    const { mean, sd } = distribution;
    const normal = normalSource(random);
    return () => mean + sd * normal();
  }
  if (distribution.shape === 't') return tSource(distribution, random);
  const { low, high } = distribution;
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  if (distribution.shape === 'rectangular') return () => low + (high - low) * random();
  if (distribution.shape === 'triangular') return () => low + half * (random() + random());
  if (distribution.shape === 'arcsine')
    return () => middle + half * Math.sin(2 * Math.PI * random());
  const { doubt } = distribution;
  return () => {
    const from = low - doubt + 2 * doubt * random();
    return from + (low + high - 2 * from) * random();
  };
}

/** Two normal draws at a time, by the polar method. */
function normalSource(random: Random): () => number {
  let spare = 0;
  let hasSpare = false;
  return () => {
    if (hasSpare) {
      hasSpare = false;
      return spare;
    }
    for (;;) {
      const x = 2 * random() - 1;
      const y = 2 * random() - 1;
      const square = x * x + y * y;
      if (square >= 1) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * scale;
      hasSpare = true;
      return x * scale;
    }
  };
}

function tSource(
  { degrees, centre, scale }: Extract<Distribution, { shape: 't' }>,
  random: Random,
): () => number {
  const normal = normalSource(random);
  // A gamma of shape below one comes from one of shape one more.
  const isSmall = degrees < 2;
  const d = degrees / 2 + (isSmall ? 1 : 0) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  const gamma = () => {
    for (;;) {
      const z = normal();
      const v = (1 + c * z) ** 3;
      if (v > 0 && Math.log(random()) < 0.5 * z * z + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  return () => {
    const chiSquare = 2 * gamma() * (isSmall ? random() ** (2 / degrees) : 1);
    return centre + scale * normal() * Math.sqrt(degrees / chiSquare);
  };
}

function requireParameters(distribution: Distribution): void {
  const { shape, ...rest } = distribution;
  const amounts = Object.values(rest);
  if (amounts.every((amount) => Number.isFinite(amount)) && isInOrder(distribution)) return;
  throw new MathsInputError(
    'sampler/parameters',
    `sampler requires finite ${shape} parameters in order, got ${amounts.join(', ')}`,
  );
}

function isInOrder(distribution: Distribution): boolean {
  if (distribution.shape === 'normal') return distribution.sd >= 0;
  if (distribution.shape === 't') return distribution.degrees > 0 && distribution.scale >= 0;
  const { low, high } = distribution;
  if (distribution.shape !== 'curvilinear-trapezoid') return low <= high;
  return low <= high && distribution.doubt >= 0 && distribution.doubt <= (high - low) / 2;
}
