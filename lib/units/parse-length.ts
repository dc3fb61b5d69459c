import { characterAt } from './character-at';
import { exactPmOfDecimal, exactPmOfFraction, resolutionPmOf } from './exact-pm';
import { typedUnit, type TypedUnit } from './length-units';
import { pmPerIn, pmPerMm, type DecimalMark, type LengthUnit } from './picometres';
import { typedNumber, type MarkQuestion, type NumberError, type TypedNumber } from './typed-number';

export type LengthSetting = {
  /** The person's decimal mark. */
  decimal: DecimalMark;
  /** The job's unit, used when none is typed. */
  unit: LengthUnit;
  /** What a typed sign is relative to, whole picometres; left out where the feature has none. */
  nominalPm?: number;
};

/** One meaning of a typed length. */
export type LengthMeaning = {
  /** Whole picometres: the length, or what a sign adds to the nominal. */
  pm: number;
  /** True when `pm` is a departure from the nominal. */
  isRelative: boolean;
  /** One unit of the last digit typed, whole picometres; null for a fraction. */
  resolutionPm: number | null;
  /** The length meant: `pm`, or nominal and `pm`. */
  sizePm: number;
  /** The system it was typed in: thou and tenths are `in`, micrometres `mm`. */
  unit: LengthUnit;
};

export type LengthQuestion =
  MarkQuestion | 'fraction-unit' | 'unit-tenths' | 'unit-mil' | 'sign-large';

export type LengthError =
  | NumberError
  | 'empty'
  | 'no-number'
  | 'two-signs'
  | 'tolerance'
  | 'unknown-unit'
  | 'two-units'
  | 'not-understood'
  | 'finer-than-picometre'
  | 'not-whole-picometres'
  | 'too-long'
  | 'no-nominal';

export type ParsedLength =
  | ({ kind: 'length' } & LengthMeaning)
  | { kind: 'question'; code: LengthQuestion; meanings: LengthMeaning[] }
  | {
      kind: 'error';
      code: LengthError;
      /** Where in the text, counted from 0, and what stands there; '' at the end of the text. */
      at: number;
      character: string;
    };

/**
 * Reads a typed length as an exact whole number of picometres, or says what to ask, or what is wrong.
 *
 * Takes decimals with either mark, inch fractions (`1 1/4"`, `1-1/4`, a single character for one half),
 * signs relative to the nominal, and the units mm, cm, m, um, in, thou, tenths, mil and uin.
 * 1 in = 25.4 mm exactly. A value that is no whole number of picometres is an error, never rounded.
 *
 * Asked, never guessed: the mark that is not the person's before exactly three digits; both marks
 * against the setting; digits with a space between; a fraction without a unit, or tenths, in a
 * metric job; mil; a signed number larger than half the nominal, which may be a gauge that prints
 * its sign (then the two meanings are that number itself and the nominal with it added). A meaning
 * above nine kilometres is not offered; a text that has no other is an error.
 *
 * Cost: one pass, well under two microseconds.
 * Source: conventions at the head of test/reference/unit_parse.json; the inch, agreement of 1959.
 *
 * @example
 * parseLength('-3 thou', { decimal: '.', unit: 'mm', nominalPm: 25_400_000_000 });
 * // kind 'length', pm -76_200_000, isRelative true, resolutionPm 25_400_000, sizePm 25_323_800_000
 */
export function parseLength(text: string, setting: LengthSetting): ParsedLength {
  const start = firstInk(text, 0);
  if (start === text.length) return wrong('empty', text, start);
  const tolerance = text.indexOf('\u00b1');
  if (tolerance >= 0) return wrong('tolerance', text, tolerance);

  const sign = signOf(text[start]!);
  const from = sign === 0 ? start : firstInk(text, start + 1);
  if (sign !== 0 && signOf(text[from] ?? '') !== 0) return wrong('two-signs', text, from);

  const number = typedNumber(text, from, setting.decimal);
  if (number.kind === 'error') return numberError(number, text, from, setting);
  const word = text.slice(number.end).trim();
  const unit = unitOf(word, number, setting);
  if (typeof unit === 'string') return wrong(unit, text, firstInk(text, number.end));

  const sizes = magnitudes(number, unit);
  if (sizes.length === 0) {
    const code = number.kind === 'fraction' ? 'not-whole-picometres' : 'finer-than-picometre';
    return wrong(code, text, from);
  }
  const held = sizes.filter(({ pm }) => pm <= Number.MAX_SAFE_INTEGER);
  if (held.length === 0) return wrong('too-long', text, from);
  const question = questionOf(number, unit);
  if (sign === 0) return settled(held.map(absolute), question);
  if (setting.nominalPm === undefined) return wrong('no-nominal', text, start);
  return signed(held, sign, setting.nominalPm, question);
}

type Magnitude = { pm: number; resolutionPm: number | null; unit: LengthUnit };

/** Every reading in every unit it may be in; those that are no whole number of picometres are left out. */
function magnitudes(number: Exclude<TypedNumber, { kind: 'error' }>, { sizes }: TypedUnit) {
  const found: Magnitude[] = [];
  for (const { unitPm, unit } of sizes) {
    if (number.kind === 'fraction') {
      const pm = exactPmOfFraction(number.whole, number.numerator, number.denominator, unitPm);
      if (pm !== null) found.push({ pm, resolutionPm: null, unit });
    } else {
      for (const reading of number.readings) {
        const pm = exactPmOfDecimal(reading, unitPm);
        const resolutionPm = resolutionPmOf(reading.decimals, unitPm);
        if (pm !== null) found.push({ pm, resolutionPm, unit });
      }
    }
  }
  return found;
}

function unitOf(
  word: string,
  number: TypedNumber,
  setting: LengthSetting,
): TypedUnit | 'unknown-unit' | 'two-units' | 'not-understood' {
  if (word === '') {
    if (number.kind === 'fraction' && setting.unit === 'mm') return fractionInMetricJob;
    return setting.unit === 'mm' ? bareMillimetres : bareInches;
  }
  const unit = typedUnit(word, setting.unit);
  if (unit !== undefined) return unit;
  const words = word.split(/\s+/);
  const known = words.map((each) => typedUnit(each, setting.unit) !== undefined);
  if (known[0] !== true) return 'unknown-unit';
  return known.every(Boolean) ? 'two-units' : 'not-understood';
}

const bareMillimetres: TypedUnit = { sizes: [{ unitPm: pmPerMm, unit: 'mm' }] };
const bareInches: TypedUnit = { sizes: [{ unitPm: pmPerIn, unit: 'in' }] };

/** Told apart from a typed unit by identity: what is asked is the fraction's question. */
const fractionInMetricJob: TypedUnit = { sizes: [...bareInches.sizes, ...bareMillimetres.sizes] };

function questionOf(number: TypedNumber, unit: TypedUnit): LengthQuestion | null {
  if (number.kind === 'decimal' && number.question !== null) return number.question;
  if (unit === fractionInMetricJob) return 'fraction-unit';
  return unit.question ?? null;
}

function absolute({ pm, resolutionPm, unit }: Magnitude): LengthMeaning {
  return { pm, isRelative: false, resolutionPm, sizePm: pm, unit };
}

function signed(
  sizes: readonly Magnitude[],
  sign: 1 | -1,
  nominalPm: number,
  question: LengthQuestion | null,
): ParsedLength {
  const relative = sizes.map(({ pm, resolutionPm, unit }) => {
    const departure = pm === 0 ? 0 : sign * pm;
    return { pm: departure, isRelative: true, resolutionPm, sizePm: nominalPm + departure, unit };
  });
  if (question !== null || relative.length > 1) return settled(relative, question);
  const only = relative[0]!;
  if (2 * Math.abs(only.pm) <= nominalPm) return settled(relative, null);
  const printed = { ...only, isRelative: false, sizePm: only.pm };
  return { kind: 'question', code: 'sign-large', meanings: [printed, only] };
}

function settled(meanings: LengthMeaning[], question: LengthQuestion | null): ParsedLength {
  if (question !== null) return { kind: 'question', code: question, meanings };
  return { kind: 'length', ...meanings[0]! };
}

function numberError(
  { code, at }: { code: NumberError; at: number },
  text: string,
  from: number,
  setting: LengthSetting,
): ParsedLength {
  const isUnit = code === 'not-a-number' && typedUnit(text.slice(from).trim(), setting.unit);
  return wrong(isUnit ? 'no-number' : code, text, at);
}

function signOf(character: string): 1 | -1 | 0 {
  if (character === '+') return 1;
  return character === '-' || character === '\u2212' || character === '\u2013' ? -1 : 0;
}

function firstInk(text: string, at: number): number {
  let here = at;
  while (here < text.length && text[here]!.trim() === '') here += 1;
  return here;
}

function wrong(code: LengthError, text: string, at: number): ParsedLength {
  return {
    kind: 'error',
    code,
    at,
    character: characterAt(text, at),
  };
}
