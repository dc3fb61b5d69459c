import { MathsInputError } from '../check';
import { fitLimits } from './fit-limits';
import { definedClasses } from './defined-classes';

export type NearFit = {
  /** As it is written: `H7/g6`. */
  text: string;
  minClearanceUm: number;
  maxClearanceUm: number;
  kind: 'clearance' | 'transition' | 'interference';
  /** The larger of the two clearances' distances from those wanted, micrometres. */
  offUm: number;
  /** True when no clearance of the fit lies outside the wanted ones. */
  inside: boolean;
};

/**
 * The standard fits whose clearances lie nearest to wanted ones, nearest first.
 *
 * On the hole basis H6 to H11 meets every shaft of its own grade or one finer;
 * on the shaft basis h5 to h11 meets every hole of its own grade or one coarser
 * (common practice, no source). Nearness is the larger of the two distances,
 * then their sum. Clearances in micrometres, interference below zero.
 * Source of the limits: [iso-286-1].
 *
 * Cost: some 300 table look-ups.
 *
 * @throws {MathsInputError} `nearest-fits/clearances`, `nearest-fits/count`, and what itGrade throws
 *
 * @example
 * nearestFits({ nominalMm: 25, minClearanceUm: 7, maxClearanceUm: 41, basis: 'hole', count: 1 });
 * // [{ text: 'H7/g6', minClearanceUm: 7, maxClearanceUm: 41, offUm: 0, inside: true, ... }]
 */
export function nearestFits(wanted: {
  nominalMm: number;
  minClearanceUm: number;
  maxClearanceUm: number;
  basis: 'hole' | 'shaft';
  count: number;
}): NearFit[] {
  const { nominalMm, minClearanceUm, maxClearanceUm, basis, count } = wanted;
  const finite = Number.isFinite(minClearanceUm) && Number.isFinite(maxClearanceUm);
  if (!finite || minClearanceUm >= maxClearanceUm) {
    throw new MathsInputError(
      'nearest-fits/clearances',
      `nearestFits requires a least clearance below the largest, got ${minClearanceUm} and ${maxClearanceUm}`,
    );
  }
  if (!Number.isInteger(count) || count < 1) {
    throw new MathsInputError(
      'nearest-fits/count',
      `nearestFits requires a whole number of fits from 1, got ${count}`,
    );
  }
  return candidates(basis, nominalMm)
    .map((text) => {
      const { minClearanceUm: min, maxClearanceUm: max, kind } = fitLimits(text, nominalMm);
      const [low, up] = [Math.abs(min - minClearanceUm), Math.abs(max - maxClearanceUm)];
      const inside = min >= minClearanceUm && max <= maxClearanceUm;
      const clearances = { minClearanceUm: min, maxClearanceUm: max, kind };
      return { sum: low + up, fit: { text, ...clearances, offUm: Math.max(low, up), inside } };
    })
    .sort((a, b) => a.fit.offUm - b.fit.offUm || a.sum - b.sum)
    .slice(0, count)
    .map(({ fit }) => fit);
}

function candidates(basis: 'hole' | 'shaft', nominalMm: number): string[] {
  const grade = (text: string) => Number(text.replace(/\D/g, ''));
  const [own, other] =
    basis === 'hole' ? (['H', 'external'] as const) : (['h', 'internal'] as const);
  const finer = basis === 'hole' ? 1 : -1;
  const bases = basis === 'hole' ? [6, 7, 8, 9, 10, 11] : [5, 6, 7, 8, 9, 10, 11];
  const partners = definedClasses(other, nominalMm);
  return bases
    .filter((number) => nominalMm <= 500 || number >= 6)
    .flatMap((number) =>
      partners
        .filter(({ text }) => [number, number - finer].includes(grade(text)))
        .map(({ text }) =>
          basis === 'hole' ? `${own}${number}/${text}` : `${text}/${own}${number}`,
        ),
    );
}
