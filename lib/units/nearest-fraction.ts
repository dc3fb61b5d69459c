import { pmPerIn } from './picometres';

/** A length as inches and a binary fraction of an inch, and what is left over. */
export type NearestFraction = {
  /** Below zero when the length is; the fraction then counts downwards too. */
  isNegative: boolean;
  whole: number;
  /** In lowest terms; 0 over 1 when only whole inches are left. */
  numerator: number;
  denominator: number;
  /** The length less the fraction, whole picometres. */
  remainderPm: number;
  /** `1 1/4`, `3/8`, `2`, `0`; U+2212 before it when below zero. */
  text: string;
};

/**
 * The fraction of an inch nearest to a length, with the denominator a power of two.
 *
 * `finest` is the largest denominator, 2 to 512: 1/512 in is 49 609 375 pm, a whole number; half of
 * it is not. A length half way between two takes the even numerator.
 *
 * @throws {RangeError} when `finest` is no power of two from 1 to 512
 *
 * @example
 * nearestFraction(12_300_000_000, 64); // 31/64 in, remainder -3 125 000 pm
 */
export function nearestFraction(pm: number, finest = 64): NearestFraction {
  if (![1, 2, 4, 8, 16, 32, 64, 128, 256, 512].includes(finest)) {
    throw new RangeError(`nearestFraction requires a power of two up to 512, got ${finest}`);
  }
  const step = pmPerIn / finest;
  const size = Math.abs(pm);
  const over = size % step;
  const below = (size - over) / step;
  const isUp = 2 * over > step || (2 * over === step && below % 2 === 1);
  const steps = isUp ? below + 1 : below;
  const isNegative = pm < 0 && steps > 0;
  let numerator = steps % finest;
  let denominator = finest;
  while (denominator > 1 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const whole = Math.floor(steps / finest);
  const remainderPm = pm - (isNegative ? -1 : 1) * steps * step;
  const text = inWords(whole, numerator, denominator, isNegative);
  return { isNegative, whole, numerator, denominator, remainderPm, text };
}

function inWords(whole: number, numerator: number, denominator: number, isNegative: boolean) {
  const fraction = numerator === 0 ? '' : `${numerator}/${denominator}`;
  const parts = [whole === 0 && fraction !== '' ? '' : String(whole), fraction];
  return (isNegative ? '\u2212' : '') + parts.filter((part) => part !== '').join(' ');
}
