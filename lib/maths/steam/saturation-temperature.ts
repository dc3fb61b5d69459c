import { MathsInputError } from '../check';
import { n, saturationEnds } from './saturation-line';

/**
 * Temperature at which water boils under an absolute pressure, kelvin.
 *
 * beta = p^(1/4); E, F, G quadratics in beta; D = 2G/(-F - sqrt(F^2 - 4EG));
 * T = (n10 + D - sqrt((n10 + D)^2 - 4(n9 + n10 D)))/2. p in MPa, 611.213 Pa to
 * 22.064 MPa; take 273.15 off for degrees C. A gauge reads above the atmosphere:
 * see absolutePressure.
 *
 * Refuses outside that range rather than going on past it. Steam scalds and
 * vessels burst: a figure here is no permission to run under pressure; follow
 * local codes, the maker's data and licensed practice.
 *
 * Source: [iapws-if97] equation 31; the check values of table 36.
 *
 * @throws {MathsInputError} `saturation-temperature/pressure`
 *
 * @example
 * saturationTemperature(0.101325); // 373.1243
 */
export function saturationTemperature(pressureMPa: number): number {
  const { lowestMPa, highestMPa } = saturationEnds;
  if (!(pressureMPa >= lowestMPa && pressureMPa <= highestMPa)) {
    throw new MathsInputError(
      'saturation-temperature/pressure',
      `saturationTemperature requires ${lowestMPa} to ${highestMPa} MPa, got ${pressureMPa}`,
    );
  }
  const beta = Math.sqrt(Math.sqrt(pressureMPa));
  const E = beta * beta + n[3] * beta + n[6];
  const F = n[1] * beta * beta + n[4] * beta + n[7];
  const G = n[2] * beta * beta + n[5] * beta + n[8];
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  return (n[10] + D - Math.sqrt((n[10] + D) ** 2 - 4 * (n[9] + n[10] * D))) / 2;
}
