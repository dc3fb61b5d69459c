import { drawnTokens, type DrawnToken } from './drawn-tokens';
import { characterAt } from './character-at';
import { typedUnit } from './length-units';
import {
  parseLength,
  type LengthError,
  type LengthMeaning,
  type LengthQuestion,
} from './parse-length';
import type { DecimalMark, LengthUnit } from './picometres';

/** A size as a drawing gives it. */
export type DrawnSize = {
  nominalPm: number;
  /** Deviations from the nominal, whole picometres; both null where none is given. */
  upperPm: number | null;
  lowerPm: number | null;
  /** `H7`, `g6`; its deviations are not looked up here. */
  isoClass: string | null;
  /** The unit the drawing gives it in. */
  unit: LengthUnit;
  isDiameter: boolean;
  /** One unit of the last digit of the nominal, whole picometres; null for a fraction. */
  resolutionPm: number | null;
  /** True when the drawing gives two limits; the rounder of them then stands as the nominal. */
  isLimits: boolean;
};

export type DrawnQuestion = LengthQuestion | 'one-deviation' | 'limits-or-deviation';

export type DrawnError =
  | LengthError
  | 'fit'
  | 'iso-class'
  | 'sign-first'
  | 'unsigned-deviation'
  | 'too-many-numbers'
  | 'limits-apart'
  | 'not-above-zero';

export type ParsedDrawnSize =
  | ({ kind: 'size'; asTyped: string } & DrawnSize)
  | { kind: 'question'; code: DrawnQuestion; meanings: DrawnSize[]; asTyped: string }
  | { kind: 'error'; code: DrawnError; at: number; character: string; asTyped: string };

/**
 * Reads the text of a size on a drawing: nominal with deviations, a tolerance class, two limits, or
 * the bare size.
 *
 * `18.000 +0.018 0`, `18.000 +0.018/0`, `12.000 0 / -0.027`, `52 +-0.05` (or the one sign for it),
 * `18 H7`, `5/32`, `1/2 in`, `17.996 to 18.000`, `18.018/18.000`, a diameter sign before any of them.
 * A unit at the end counts for the whole text, except that micrometres, thou and tenths there count
 * for the deviations only. Every number is read by `parseLength`, exactly and by its conventions.
 *
 * Asked: whatever `parseLength` asks; one signed deviation alone (the other may be zero or left
 * open); a single minus before a number as large as the size, which may join two limits. Deviations
 * may come in either order. With two limits the one with fewer significant digits stands as the
 * nominal, the smaller one when they are alike.
 *
 * @example
 * parseDrawnSize('\u00d822 \u00b10.05', { decimal: '.', unit: 'mm' });
 * // nominalPm 22e9, upperPm 50e6, lowerPm -50e6, isDiameter true
 */
export function parseDrawnSize(
  asTyped: string,
  setting: { decimal: DecimalMark; unit: LengthUnit },
): ParsedDrawnSize {
  try {
    return { ...read(asTyped, setting), asTyped };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { code, at } = error;
    return {
      kind: 'error',
      code,
      at,
      character: characterAt(asTyped, at),
      asTyped,
    };
  }
}

/** Carries a refusal out of the reading; never leaves this file. */
class Refusal extends Error {
  constructor(
    readonly code: DrawnError,
    readonly at: number,
  ) {
    super(code);
  }
}

type Setting = { decimal: DecimalMark; unit: LengthUnit };

type WithoutText<T> = T extends unknown ? Omit<T, 'asTyped'> : never;

function read(asTyped: string, setting: Setting): WithoutText<ParsedDrawnSize> {
  const { text, isDiameter } = withoutDiameter(asTyped);
  const { rest, isoClass } = withoutClass(text);
  const tokens = drawnTokens(rest);
  if (!Array.isArray(tokens)) throw new Refusal('not-understood', tokens.at);
  const numbers = grouped(tokens, setting.unit, rest);
  const first = numbers[0];
  if (first === undefined) throw new Refusal('no-number', rest.search(/\S|$/));
  if (first.sign !== '') throw new Refusal('sign-first', first.at);

  const units = unitsOf(numbers);
  const lengths = numbers.map((number, i) => lengthOf(number, units[i]!, setting));
  const base = { isoClass, isDiameter, isLimits: false };
  const plans = planned(numbers, lengths);
  const code = plans.code ?? lengths.find((length) => length.code !== undefined)?.code;
  const meanings = plans.sizes.map((size) => ({ ...base, ...size }));
  const bad = meanings.find(({ nominalPm }) => nominalPm <= 0);
  if (bad !== undefined) throw new Refusal('not-above-zero', first.at);
  if (code !== undefined) return { kind: 'question', code, meanings };
  return { kind: 'size', ...meanings[0]! };
}

/** The text with a diameter sign or word blanked out, so that places in it stay the same. */
function withoutDiameter(text: string) {
  const mark =
    /^\s*(?:[\u00d8\u00f8\u2300\u2205]|dia(?:m|meter)?\b\.?)|\s(?:[\u00d8\u2300]|dia(?:m|meter)?\.?)\s*$/i;
  const found = mark.exec(text);
  if (found === null) return { text, isDiameter: false };
  return { text: blanked(text, found.index, found[0].length), isDiameter: true };
}

const letters = 'a|b|cd|c|d|ef|e|fg|f|g|h|js|j|k|m|n|p|r|s|t|u|v|x|y|za|zb|zc|z';
const classPattern = new RegExp(
  `(?<=^|[\\s\\d"(])(${letters}|${letters.toUpperCase()})(\\d{1,2})(?=$|[\\s(/-])`,
);

function withoutClass(text: string) {
  const found = classPattern.exec(text);
  if (found === null || !/\d/.test(text.slice(0, found.index)))
    return { rest: text, isoClass: null };
  const after = found.index + found[0].length;
  const rest = blanked(text, found.index, found[0].length);
  const second = classPattern.exec(rest.slice(after).replace(/^[/-]/, ' '));
  if (second !== null) throw new Refusal('fit', found.index);
  if (Number(found[2]) > 18) throw new Refusal('iso-class', found.index);
  return { rest, isoClass: found[0] };
}

function blanked(text: string, at: number, length: number): string {
  return text.slice(0, at) + ' '.repeat(length) + text.slice(at + length);
}

type DrawnNumber = {
  text: string;
  at: number;
  sign: '' | '+' | '-' | '\u00b1';
  /** What stood between this number and the one before it. */
  before: '' | 'slash' | 'to';
  unit: string;
};

function grouped(tokens: readonly DrawnToken[], job: LengthUnit, text: string): DrawnNumber[] {
  const numbers: DrawnNumber[] = [];
  let sign: DrawnNumber['sign'] = '';
  let before: DrawnNumber['before'] = '';
  for (const token of tokens) {
    if (token.kind === 'sign') {
      if (sign !== '') throw new Refusal('two-signs', token.at);
      sign = token.sign;
    } else if (token.kind === 'slash' || token.kind === 'to') {
      if (sign !== '' || before !== '') throw new Refusal('not-understood', token.at);
      before = token.kind;
    } else if (token.kind === 'number') {
      numbers.push({ text: token.text, at: token.at, sign, before, unit: '' });
      sign = '';
      before = '';
    } else {
      const last = numbers.at(-1);
      if (typedUnit(token.text, job) === undefined) throw new Refusal('unknown-unit', token.at);
      if (last === undefined) throw new Refusal('no-number', token.at);
      if (last.unit !== '') throw new Refusal('two-units', token.at);
      last.unit = token.text;
    }
  }
  if (sign !== '' || before !== '') throw new Refusal('no-digits', text.length);
  if (numbers.length > 3) throw new Refusal('too-many-numbers', numbers[3]!.at);
  return numbers;
}

const smallUnits = /^(?:[\u00b5\u03bcu]|micro|thou|tenth|mil)/i;

/** The unit word of each number: its own, else the one at the end, else the nominal's. */
function unitsOf(numbers: readonly DrawnNumber[]): string[] {
  const last = numbers.at(-1)!.unit;
  const nominal = numbers[0]!.unit || (smallUnits.test(last) && numbers.length > 1 ? '' : last);
  return numbers.map((number, i) => (i === 0 ? nominal : number.unit || last || nominal));
}

type DrawnLength = { meanings: readonly LengthMeaning[]; code: LengthQuestion | undefined };

function lengthOf(number: DrawnNumber, unitWord: string, setting: Setting): DrawnLength {
  const parsed = parseLength(`${number.text} ${unitWord}`, setting);
  if (parsed.kind === 'error') throw new Refusal(parsed.code, number.at + parsed.at);
  if (parsed.kind === 'question') return { meanings: parsed.meanings, code: parsed.code };
  return { meanings: [parsed], code: undefined };
}

type Plan = Pick<DrawnSize, 'nominalPm' | 'upperPm' | 'lowerPm' | 'unit' | 'resolutionPm'> & {
  isLimits?: true;
};

function planned(
  numbers: readonly DrawnNumber[],
  lengths: readonly DrawnLength[],
): { sizes: Plan[]; code?: DrawnQuestion } {
  const [nominal, ...deviations] = lengths as [DrawnLength, ...DrawnLength[]];
  const [, second, third] = numbers;
  if (second === undefined) return { sizes: eachNominal(nominal, null, null) };
  if (third === undefined && second.sign === '' && second.before !== '') {
    return { sizes: limits(numbers, lengths) };
  }
  if (third !== undefined && second.sign === '\u00b1') {
    throw new Refusal('too-many-numbers', third.at);
  }
  const readings = Math.max(...deviations.map(({ meanings }) => meanings.length));
  const plans = Array.from({ length: readings }, (_, reading) => {
    const sizes = deviations.map(
      ({ meanings }) => meanings[Math.min(reading, meanings.length - 1)]!,
    );
    const deviationsPm = sizes.map(({ pm }, i) => deviationPm(numbers[i + 1]!, pm));
    return withDeviations(numbers, lengths, deviationsPm);
  });
  const code = plans[0]?.code;
  const all = plans.flatMap(({ sizes }) => sizes);
  return code === undefined ? { sizes: all } : { sizes: all, code };
}

function withDeviations(
  numbers: readonly DrawnNumber[],
  lengths: readonly DrawnLength[],
  deviationsPm: readonly number[],
): { sizes: Plan[]; code?: DrawnQuestion } {
  const nominal = lengths[0]!;
  const only = deviationsPm[0]!;
  if (numbers[1]!.sign === '\u00b1') {
    return { sizes: eachNominal(nominal, only, only === 0 ? 0 : -only) };
  }
  if (deviationsPm.length === 1) return oneDeviation(numbers, lengths, only);
  return { sizes: eachNominal(nominal, Math.max(...deviationsPm), Math.min(...deviationsPm)) };
}

function deviationPm(number: DrawnNumber, pm: number): number {
  if (pm === 0) return 0;
  if (number.sign === '') throw new Refusal('unsigned-deviation', number.at);
  return number.sign === '-' ? -pm : pm;
}

function oneDeviation(
  numbers: readonly DrawnNumber[],
  lengths: readonly DrawnLength[],
  deviation: number,
): { sizes: Plan[]; code: DrawnQuestion } {
  const nominal = lengths[0]!;
  if (numbers[1]!.sign === '') throw new Refusal('unsigned-deviation', numbers[1]!.at);
  if (numbers[1]!.sign === '-' && -2 * deviation > nominal.meanings[0]!.pm) {
    return { sizes: limits(numbers, lengths), code: 'limits-or-deviation' };
  }
  const [upper, lower] = [Math.max(0, deviation), Math.min(0, deviation)];
  const open =
    deviation > 0 ? eachNominal(nominal, upper, null) : eachNominal(nominal, null, lower);
  return { sizes: [...eachNominal(nominal, upper, lower), ...open], code: 'one-deviation' };
}

function eachNominal(nominal: DrawnLength, upperPm: number | null, lowerPm: number | null): Plan[] {
  return nominal.meanings.map(({ pm, resolutionPm, unit }) => ({
    nominalPm: pm,
    upperPm,
    lowerPm,
    unit,
    resolutionPm,
  }));
}

function limits(numbers: readonly DrawnNumber[], lengths: readonly DrawnLength[]): Plan[] {
  const [a, b] = [lengths[0]!, lengths[1]!];
  return a.meanings.flatMap((first, i) => {
    const second = b.meanings[Math.min(i, b.meanings.length - 1)]!;
    const [high, low] = [Math.max(first.pm, second.pm), Math.min(first.pm, second.pm)];
    if (2 * low < high) throw new Refusal('limits-apart', numbers[1]!.at);
    const isFirst = isRounder(numbers[0]!.text, numbers[1]!.text, first.pm < second.pm);
    const nominalPm = isFirst ? first.pm : second.pm;
    const { resolutionPm, unit } = isFirst ? first : second;
    return {
      nominalPm,
      upperPm: high - nominalPm,
      lowerPm: low - nominalPm,
      unit,
      resolutionPm,
      isLimits: true as const,
    };
  });
}

function isRounder(a: string, b: string, isSmaller: boolean): boolean {
  return figures(a) === figures(b) ? isSmaller : figures(a) < figures(b);
}

function figures(text: string): number {
  return text.replace(/[.,]/, '').replace(/0+$/, '').replace(/^0+/, '').length;
}
