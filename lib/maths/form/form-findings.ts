import { MathsInputError } from '../check';
import { leastDifferenceMm, type TwoPointForm } from './two-point-form';

/** One thing the readings say about the shape, as data for a sentence. */
export type FormFinding =
  | { kind: 'oval'; amountMm: number; station: number; widestDirection: number }
  | { kind: 'taper'; amountMm: number; wideEnd: 'first' | 'last' }
  | { kind: 'barrel' | 'waist'; amountMm: number; station: number };

/**
 * What a two-point form shows that is larger than the doubt of its readings:
 * oval, tapered, barrel or waist, the largest first.
 *
 * Amounts are differences of diameters, mm, above zero. `oval` is the most oval
 * station and its widest direction; `taper` names the end that is wide;
 * `barrel` and `waist` name the inner station furthest from the straight line
 * between the ends. "Wide" means the larger diameter, for bores and shafts alike.
 *
 * An amount below `leastToldMm` is left out. About three times the standard
 * uncertainty of a reading is usual (common practice, no source); zero tells everything. An
 * empty list says that nothing can be told, not that the feature is perfect.
 *
 * @throws {MathsInputError} `form-findings/least-told` when it is not a finite number from zero up
 *
 * @example
 * formFindings(twoPointForm(grid), 0.002); // [{ kind: 'taper', amountMm: 0.006, wideEnd: 'first' }]
 */
export function formFindings(form: TwoPointForm, leastToldMm: number): FormFinding[] {
  if (!(Number.isFinite(leastToldMm) && leastToldMm >= 0)) {
    throw new MathsInputError(
      'form-findings/least-told',
      `formFindings requires a least amount from zero up, got ${leastToldMm}`,
    );
  }
  return [...ovalOf(form), ...taperOf(form), ...bowOf(form)]
    .filter((finding) => finding.amountMm >= leastToldMm)
    .sort((a, b) => b.amountMm - a.amountMm);
}

function ovalOf(form: TwoPointForm): FormFinding[] {
  const worst = form.ovality.reduce((most, one) => (one.amountMm > most.amountMm ? one : most), {
    station: 0,
    amountMm: 0,
  } as TwoPointForm['ovality'][number]);
  const { station, amountMm, widestDirection } = worst;
  return widestDirection === undefined
    ? []
    : [{ kind: 'oval', amountMm, station, widestDirection }];
}

function taperOf({ taperOfMeansMm = 0 }: TwoPointForm): FormFinding[] {
  if (Math.abs(taperOfMeansMm) < leastDifferenceMm) return [];
  const wideEnd = taperOfMeansMm > 0 ? 'first' : 'last';
  return [{ kind: 'taper', amountMm: Math.abs(taperOfMeansMm), wideEnd }];
}

function bowOf({ bow }: TwoPointForm): FormFinding[] {
  if (bow === undefined || Math.abs(bow.amountMm) < leastDifferenceMm) return [];
  const kind = bow.amountMm > 0 ? 'barrel' : 'waist';
  return [{ kind, amountMm: Math.abs(bow.amountMm), station: bow.station }];
}
