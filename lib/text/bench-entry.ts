import type { LengthEcho } from '@/lib/units/echo-length';
import { echoLength } from '@/lib/units/echo-length';
import type { LengthMeaning, LengthQuestion } from '@/lib/units/parse-length';
import { shownLength, type Shown } from './shown-size';
import { unitWords } from './unit-words';

/**
 * How a typed length will be read: "is 18.016 mm, 0.7093 in". What stands there already is not said twice:
 * a plain 18.016 in a metric job is only "mm, 0.7093 in".
 */
export function echoWords(text: string, meaning: LengthMeaning, shown: Shown): string {
  const { own, ownUnit, other, otherUnit } = echoLength(meaning, shown);
  const isPlain = text.trim() === own;
  return isPlain
    ? `${ownUnit}, ${other} ${otherUnit}`
    : `is ${own} ${ownUnit}, ${other} ${otherUnit}`;
}

/** Which sizes last figures may be of, while they are typed: "18.001 or 17.901?" */
export function whichWords(meanings: readonly LengthMeaning[], shown: Shown): string {
  return `${meanings.map((meaning) => echoLength(meaning, shown).own).join(' or ')}?`;
}

/** What a length would leave to its target: "0.086 left", "at the aim", "0.003 past the aim". */
export function stepToTarget(
  sizePm: number,
  aimPm: number,
  side: 'top' | 'bottom' | null,
  resolutionPm: number,
  shown: Shown,
): string {
  const leftPm = side === 'bottom' ? aimPm - sizePm : sizePm - aimPm;
  const amount = shownLength(Math.abs(leftPm), resolutionPm, shown);
  if (Math.abs(leftPm) < resolutionPm / 2) return 'at the aim';
  if (side === null) return `${amount} ${leftPm > 0 ? 'over' : 'under'} the aim`;
  return leftPm > 0 ? `${amount} left` : `${amount} past the aim`;
}

export type EntryQuestion = { title: string; answers: string[] };

/**
 * The question an ambiguous text raises, with an answer for each of its meanings, in their order.
 *
 * @example
 * // 1,250: one and a quarter, or one thousand two hundred and fifty?
 */
export function questionWords(
  text: string,
  code: LengthQuestion | 'last-digits' | 'gauge-unit',
  meanings: readonly LengthMeaning[],
  shown: Shown,
): EntryQuestion {
  const typed = text.trim();
  const echoes = meanings.map((meaning) => echoLength(meaning, shown));
  const answers = meanings.map((meaning, index) => answerOf(code, meaning, echoes[index]!));
  return { title: `${typed}: ${reasons[code]}`, answers };
}

const reasons: Record<LengthQuestion | 'last-digits' | 'gauge-unit', string> = {
  'mark-thousands': 'is that mark for decimals or for thousands?',
  'marks-against-setting': 'is this the size?',
  'space-thousands': 'is that one number?',
  'fraction-unit': 'a fraction of an inch, or of a millimetre?',
  'unit-tenths': 'tenths of a thou, or of a millimetre?',
  'unit-mil': 'thousandths of an inch, or millimetres?',
  'last-digits': 'the last figures of which size?',
  'gauge-unit': 'in which unit did the gauge stand?',
  'sign-large': 'the size itself, or from the nominal?',
};

function answerOf(
  code: LengthQuestion | 'last-digits' | 'gauge-unit',
  meaning: LengthMeaning,
  echo: LengthEcho,
): string {
  const size = `${echo.own} ${echo.ownUnit}`;
  if (code === 'sign-large') return meaning.isRelative ? `from the nominal: ${size}` : size;
  if (code === 'fraction-unit' || code === 'gauge-unit')
    return `${unitWords(meaning.unit)}: ${size}`;
  return size;
}

/** Said of a reading whose place was asked about and not answered before the next one came. */
export function wentOnWords(text: string, place: string): string {
  return `${text.trim()} was taken for ${place === '' ? 'one more' : place}.`;
}

/** What was asked about, typed over and waits beside the line; empty where there is nothing. */
export function unkeptWords(texts: readonly string[]): string {
  if (texts.length === 0) return '';
  const [were, wait] = texts.length === 1 ? ['was', 'waits'] : ['were', 'wait'];
  return `${texts.join(' and ')} ${were} not answered, and ${wait} to be placed.`;
}
