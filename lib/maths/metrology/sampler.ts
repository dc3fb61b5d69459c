import { MathsInputError } from '../check';
import type { Distribution } from './distribution';
import { normalDraws } from './normal-draws';
import type { Random } from './seeded-random';

/** Fills an array with the next draws. */
export type Sampler = (into: Float64Array) => void;

/**
 * A source of draws from a distribution, fed by a random sequence; many at a time.
 *
 * Normal draws by the ziggurat, chi-square for t by Marsaglia and Tsang, the others directly from
 * one or two rectangular numbers. Cost: O(1) a draw. Source: [jcgm-101] 6.4, [marsaglia-tsang-2000].
 *
 * @throws {MathsInputError} `sampler/parameters`
 *
 * @example
 * sampler({ shape: 'rectangular', low: 0, high: 1 }, seededRandom(1))(new Float64Array(500));
 */
export function sampler(distribution: Distribution, random: Random): Sampler {
  requireParameters(distribution);
  switch (distribution.shape) {
    case 'normal':
      return normalSampler(distribution, random);
    case 't':
      return tSampler(distribution, random);
    case 'rectangular':
      return rectangularSampler(distribution, random);
    case 'triangular':
      return triangularSampler(distribution, random);
    case 'arcsine':
      return arcsineSampler(distribution, random);
    case 'curvilinear-trapezoid':
      return trapezoidSampler(distribution, random);
  }
}

type Of<Shape extends Distribution['shape']> = Extract<Distribution, { shape: Shape }>;

function normalSampler({ mean, sd }: Of<'normal'>, random: Random): Sampler {
  const normal = normalDraws(random);
  return (into) => {
    for (let i = 0; i < into.length; i += 1) into[i] = mean + sd * normal();
  };
}

function rectangularSampler({ low, high }: Of<'rectangular'>, random: Random): Sampler {
  const width = high - low;
  return (into) => {
    for (let i = 0; i < into.length; i += 1) into[i] = low + width * random();
  };
}

function triangularSampler({ low, high }: Of<'triangular'>, random: Random): Sampler {
  const half = (high - low) / 2;
  return (into) => {
    for (let i = 0; i < into.length; i += 1) into[i] = low + half * (random() + random());
  };
}

function arcsineSampler({ low, high }: Of<'arcsine'>, random: Random): Sampler {
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  return (into) => {
    for (let i = 0; i < into.length; i += 1) {
      into[i] = middle + half * Math.sin(2 * Math.PI * random());
    }
  };
}

function trapezoidSampler(
  { low, high, doubt }: Of<'curvilinear-trapezoid'>,
  random: Random,
): Sampler {
  return (into) => {
    for (let i = 0; i < into.length; i += 1) {
      const from = low - doubt + 2 * doubt * random();
      into[i] = from + (low + high - 2 * from) * random();
    }
  };
}

function tSampler({ degrees, centre, scale }: Of<'t'>, random: Random): Sampler {
  const normal = normalDraws(random);
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
  return (into) => {
    for (let i = 0; i < into.length; i += 1) {
      const chiSquare = 2 * gamma() * (isSmall ? random() ** (2 / degrees) : 1);
      into[i] = centre + scale * normal() * Math.sqrt(degrees / chiSquare);
    }
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
