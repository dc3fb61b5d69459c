import { MathsInputError } from '../check';
import { n, saturationEnds } from './saturation-line';

/**
 * Absolute pressure at which water boils at a temperature, MPa.
 *
 * theta = T + n9/(T - n10); A, B, C quadratics in theta;
 * p = (2C/(-B + sqrt(B^2 - 4AC)))^4. T in kelvin, 273.15 to 647.096.
 *
 * Refuses outside that range rather than going on past it. Steam scalds and
 * vessels burst: a figure here is no permission to run under pressure; follow
 * local codes, the maker's data and licensed practice.
 *
 * Source: [iapws-if97] equation 30; the ten-figure check values of table 35.
 *
 * @throws {MathsInputError} `saturation-pressure/temperature`
 *
 * @example
 * saturationPressure(373.15); // 0.10142
 */
export function saturationPressure(temperatureK: number): number {
  const { lowestK, highestK } = saturationEnds;
  if (!(temperatureK >= lowestK && temperatureK <= highestK)) {
    throw new MathsInputError(
      'saturation-pressure/temperature',
      `saturationPressure requires ${lowestK} to ${highestK} K, got ${temperatureK}`,
    );
  }
  const theta = temperatureK + n[9] / (temperatureK - n[10]);
  const A = theta * theta + n[1] * theta + n[2];
  const B = n[3] * theta * theta + n[4] * theta + n[5];
  const C = n[6] * theta * theta + n[7] * theta + n[8];
  return ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}
