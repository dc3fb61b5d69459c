import { characterAt } from './character-at';
import { exactPmOfDecimal } from './exact-pm';
import type { DecimalMark } from './picometres';
import { typedNumber } from './typed-number';

/** How many whole quanta one of a unit is, by the unit as typed in small letters; '' is no unit. */
export type QuantaPerUnit = Readonly<Record<string, number>>;

export type ParsedQuantity =
  | { kind: 'quantity'; quanta: number; unit: string }
  | { kind: 'error'; code: 'empty' | 'not-a-number' | 'two-ways' | 'too-fine'; character: string }
  | { kind: 'error'; code: 'unit'; character: string };

/**
 * Reads a number with a sign and one of the given units: a slope, a coefficient, a temperature.
 *
 * Exact: a figure that is no whole number of quanta is refused, never rounded. Blanks do not matter;
 * a number that can be read in two ways is refused as `two-ways`.
 *
 * @example
 * parseQuantity('1.5 thou/in', { decimal: '.', units: { '': 1000, 'thou/in': 1000 } });
 * // { kind: 'quantity', quanta: 1500, unit: 'thou/in' }
 */
export function parseQuantity(
  text: string,
  { decimal, units }: { decimal: DecimalMark; units: QuantaPerUnit },
): ParsedQuantity {
  const typed = text.trim();
  const error = (code: 'empty' | 'not-a-number' | 'two-ways' | 'too-fine', at: number) =>
    ({ kind: 'error', code, character: characterAt(typed, at) }) as const;
  if (typed === '') return error('empty', 0);
  const sign = /^[+\-\u2212\u2013]\s*/.exec(typed)?.[0] ?? '';
  const read = typedNumber(typed, sign.length, decimal);
  if (read.kind === 'error') return error('not-a-number', read.at);
  if (read.kind === 'fraction') return error('not-a-number', sign.length);
  if (read.question !== null) return error('two-ways', sign.length);
  const rest = typed.slice(read.end);
  const unit = rest.replaceAll(/\s+/g, '').replaceAll('\u03bc', '\u00b5').toLowerCase();
  const perUnit = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (perUnit === undefined) return { kind: 'error', code: 'unit', character: rest.trim() };
  const quanta = exactPmOfDecimal(read.readings[0]!, perUnit);
  if (quanta === null) return error('too-fine', typed.length - 1);
  const isBelow = sign !== '' && sign[0] !== '+' && quanta !== 0;
  return { kind: 'quantity', quanta: isBelow ? -quanta : quanta, unit };
}
