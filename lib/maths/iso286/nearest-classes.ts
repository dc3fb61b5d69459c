import { MathsInputError } from '../check';
import { definedClasses } from './defined-classes';

export type NearClass = {
  text: string;
  upperUm: number;
  lowerUm: number;
  /** The larger of the two limits' distances from those wanted, micrometres. */
  offUm: number;
};

/**
 * The standard tolerance classes whose limits lie nearest to wanted ones,
 * nearest first.
 *
 * Every letter in grades IT4 to IT13 that the standard defines at the size is
 * tried. Nearness is the larger of the two distances, then their sum, then the
 * order of the alphabet and of the grades. Wanted limits are deviations from
 * the nominal, micrometres. Source: [iso-286-1]; the ranking is common practice,
 * no source.
 *
 * Cost: some 300 table look-ups.
 *
 * @throws {MathsInputError} `nearest-classes/limits`, `nearest-classes/count`, and what itGrade throws
 *
 * @example
 * nearestClasses({ side: 'external', nominalMm: 25, upperUm: -7, lowerUm: -20, count: 1 });
 * // [{ text: 'g6', upperUm: -7, lowerUm: -20, offUm: 0 }]
 */
export function nearestClasses(wanted: {
  side: 'internal' | 'external';
  nominalMm: number;
  upperUm: number;
  lowerUm: number;
  count: number;
}): NearClass[] {
  const { side, nominalMm, upperUm, lowerUm, count } = wanted;
  if (!(Number.isFinite(upperUm) && Number.isFinite(lowerUm) && upperUm > lowerUm)) {
    throw new MathsInputError(
      'nearest-classes/limits',
      `nearestClasses requires an upper limit above the lower, got ${upperUm} and ${lowerUm}`,
    );
  }
  if (!Number.isInteger(count) || count < 1) {
    throw new MathsInputError(
      'nearest-classes/count',
      `nearestClasses requires a whole number of classes from 1, got ${count}`,
    );
  }
  return definedClasses(side, nominalMm)
    .map((one) => {
      const [up, low] = [Math.abs(one.upperUm - upperUm), Math.abs(one.lowerUm - lowerUm)];
      return { ...one, offUm: Math.max(up, low), sum: up + low };
    })
    .sort((a, b) => a.offUm - b.offUm || a.sum - b.sum)
    .slice(0, count)
    .map(({ text, upperUm: up, lowerUm: low, offUm }) => ({
      text,
      upperUm: up,
      lowerUm: low,
      offUm,
    }));
}
