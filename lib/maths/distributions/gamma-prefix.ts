import { deviance } from './deviance';
import { stirlingError } from './stirling-error';

/**
 * x^a e^-x / Gamma(a) for a and x above zero, in the saddle-point form
 * sqrt(a/(2 pi)) exp(-delta(a) - [a ln(a/x) + x - a]); full precision for any a.
 *
 * Divided by x it is the density of the gamma distribution of shape a. Source: [loader-2000].
 */
export function gammaPrefix(a: number, x: number): number {
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(-stirlingError(a) - deviance(a, x));
}
