import { pmPerIn, pmPerMm, pmPerThou, type LengthUnit } from './picometres';

/** One size a typed unit may have, and the system it belongs to. */
export type UnitSize = { unitPm: number; unit: LengthUnit };

/** What a typed unit may mean; with a question, a person has to choose between the sizes. */
export type TypedUnit = { sizes: readonly UnitSize[]; question?: 'unit-tenths' | 'unit-mil' };

/**
 * The unit a word stands for, or undefined when it is no unit of length used here.
 *
 * A tenth is 0.0001 in in an inch job; in a metric job it may be a tenth of a millimetre. A mil is
 * a thousandth of an inch, or millimetres as they are spoken. Both are asked. Capitals do not
 * matter, except that M alone is no metre.
 */
export function typedUnit(word: string, job: LengthUnit): TypedUnit | undefined {
  if (word === 'm') return metre;
  const known = words.get(word) ?? words.get(word.toLowerCase());
  return known === tenth && job === 'in' ? tenthOfThou : known;
}

const metric = (unitPm: number): UnitSize => ({ unitPm, unit: 'mm' });
const imperial = (unitPm: number): UnitSize => ({ unitPm, unit: 'in' });

const metre: TypedUnit = { sizes: [metric(1000 * pmPerMm)] };
const millimetre: TypedUnit = { sizes: [metric(pmPerMm)] };
const centimetre: TypedUnit = { sizes: [metric(10 * pmPerMm)] };
const micrometre: TypedUnit = { sizes: [metric(pmPerMm / 1000)] };
const inch: TypedUnit = { sizes: [imperial(pmPerIn)] };
const thou: TypedUnit = { sizes: [imperial(pmPerThou)] };
const microinch: TypedUnit = { sizes: [imperial(pmPerThou / 1000)] };
const tenthOfThou: TypedUnit = { sizes: [imperial(pmPerThou / 10)] };
const tenth: TypedUnit = {
  sizes: [imperial(pmPerThou / 10), metric(pmPerMm / 10)],
  question: 'unit-tenths',
};
const mil: TypedUnit = { sizes: [imperial(pmPerThou), metric(pmPerMm)], question: 'unit-mil' };

/** Lower case; both the micro sign (U+00B5) and the Greek letter (U+03BC) are typed. */
const words = new Map<string, TypedUnit>([
  ['mm', millimetre],
  ['millimetre', millimetre],
  ['millimetres', millimetre],
  ['millimeter', millimetre],
  ['millimeters', millimetre],
  ['cm', centimetre],
  ['\u00b5m', micrometre],
  ['\u03bcm', micrometre],
  ['um', micrometre],
  ['micron', micrometre],
  ['microns', micrometre],
  ['micrometre', micrometre],
  ['micrometres', micrometre],
  ['in', inch],
  ['in.', inch],
  ['inch', inch],
  ['inches', inch],
  ['"', inch],
  ['\u2033', inch],
  ['\u201d', inch],
  ['\u201c', inch],
  ["''", inch],
  ['\u2032\u2032', inch],
  ['\u2019\u2019', inch],
  ['thou', thou],
  ['thous', thou],
  ['\u00b5in', microinch],
  ['\u03bcin', microinch],
  ['uin', microinch],
  ['microinch', microinch],
  ['microinches', microinch],
  ['tenth', tenth],
  ['tenths', tenth],
  ['mil', mil],
  ['mils', mil],
]);
