import { MathsInputError } from '../check';
import type { Distribution } from './distribution';
import { degreesFromDoubt } from './type-b';

/**
 * Mean, standard deviation and degrees of freedom a distribution brings to the law of propagation.
 *
 * For t the scale itself with its degrees of freedom is what the GUM uses (4.2.3), not the standard
 * deviation of the t distribution. The doubt of a curvilinear trapezoid becomes degrees of freedom
 * (JCGM 100 G.4.2), its width that of the rectangle. Cost: O(1). Source: [jcgm-100] 4.3, G.4.2.
 *
 * @throws {MathsInputError} `distribution-moments/parameters`
 */
export function distributionMoments(distribution: Distribution): {
  value: number;
  u: number;
  degrees: number;
} {
  const found = momentsOf(distribution);
  if (Number.isFinite(found.value) && found.u >= 0 && found.u < Infinity) return found;
  throw new MathsInputError(
    'distribution-moments/parameters',
    `distributionMoments requires finite ${distribution.shape} parameters in order, got ${found.value} and ${found.u}`,
  );
}

function momentsOf(distribution: Distribution) {
  if (distribution.shape === 'normal') {
    return { value: distribution.mean, u: distribution.sd, degrees: Infinity };
  }
  if (distribution.shape === 't') {
    const { centre, scale, degrees } = distribution;
    return { value: centre, u: scale, degrees };
  }
  const { low, high, shape } = distribution;
  const value = (low + high) / 2;
  const half = (high - low) / 2;
  if (shape === 'triangular') return { value, u: half / Math.sqrt(6), degrees: Infinity };
  if (shape === 'arcsine') return { value, u: half / Math.SQRT2, degrees: Infinity };
  const doubt = shape === 'curvilinear-trapezoid' ? distribution.doubt / half : 0;
  const degrees = doubt > 0 ? degreesFromDoubt(doubt) : Infinity;
  return { value, u: half / Math.sqrt(3), degrees };
}
