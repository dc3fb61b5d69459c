import { MathsInputError } from '../check';
import { requireChance } from './guards';

/**
 * The value a Weibull variable that begins at zero stays below with probability p:
 * scale (-ln(1 - p))^(1/shape). Source: [nist-handbook] 1.3.6.6.8.
 *
 * @throws {MathsInputError} `weibull-quantile/chance`, `weibull-quantile/parameters`
 *
 * @example
 * weibullQuantile(0.5, { shape: 1.5, scale: 0.01 }); // 0.0078322
 */
export function weibullQuantile(
  p: number,
  { shape, scale }: { shape: number; scale: number },
): number {
  requireChance('weibullQuantile', 'weibull-quantile', p);
  if (!(shape > 0 && shape < Infinity && scale > 0 && scale < Infinity)) {
    throw new MathsInputError(
      'weibull-quantile/parameters',
      `weibullQuantile requires shape and scale above zero, got ${shape} and ${scale}`,
    );
  }
  return scale * (-Math.log1p(-p)) ** (1 / shape);
}
