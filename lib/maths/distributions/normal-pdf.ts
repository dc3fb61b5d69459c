/** Density of the standard normal distribution: exp(-x^2/2)/sqrt(2 pi). */
export function normalPdf(x: number): number {
  return Math.exp(-0.5 * x * x) * 0.3989422804014327;
}
