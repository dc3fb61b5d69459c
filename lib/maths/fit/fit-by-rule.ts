import { MathsInputError } from '../check';
import { requireSize, type Fit } from './check-fit';

/**
 * A fit by a rule of practice: so much clearance for each millimetre of
 * diameter, plus a fixed amount.
 *
 * clearance = fixed + rate x diameter for the least, the aim and the most, each
 * rounded to a whole picometre. Rates in micrometres per mm (the same figure is
 * thousandths of an inch per inch), below zero for an interference. Source:
 * common practice, no source; the rates are the reader's own.
 *
 * @throws {MathsInputError} `fit-by-rule/size`, `fit-by-rule/rule`
 *
 * @example
 * // One thousandth per inch, from half of it to one and a half.
 * fitByRule(25_400_000_000, { ratesUmPerMm: { min: 0.5, aim: 1, max: 1.5 } });
 * // { minPm: 12_700_000, aimPm: 25_400_000, maxPm: 38_100_000 }
 */
export function fitByRule(
  diameterPm: number,
  rule: { ratesUmPerMm: { min: number; aim: number; max: number }; fixedPm?: number },
): Fit {
  requireSize('fit-by-rule', 'fitByRule', 'a diameter', diameterPm);
  const { min, aim, max } = rule.ratesUmPerMm;
  const { fixedPm = 0 } = rule;
  const finite = [min, aim, max].every(Number.isFinite) && Number.isSafeInteger(fixedPm);
  if (!finite || !(min <= aim && aim <= max && min < max)) {
    throw new MathsInputError(
      'fit-by-rule/rule',
      `fitByRule requires rates in order and a whole fixed amount, got ${min}, ${aim}, ${max} and ${fixedPm}`,
    );
  }
  const at = (rate: number) => fixedPm + Math.round((rate * diameterPm) / 1000);
  return { minPm: at(min), aimPm: at(aim), maxPm: at(max) };
}
