import { requirePlace } from './guards';

/**
 * Density of the standard normal distribution: exp(-x^2/2)/sqrt(2 pi); 0 at both infinities.
 *
 * Cost: O(1). Source: by definition.
 *
 * @throws {MathsInputError} `normal-pdf/place`
 *
 * @example
 * normalPdf(0); // 0.3989422804014327
 */
export function normalPdf(x: number): number {
  requirePlace('normalPdf', 'normal-pdf', x);
  return Math.exp(-0.5 * x * x) * 0.3989422804014327;
}
