import type { LengthMeaning } from '@/lib/units/parse-length';
import { entryLastDigits, type LastDigitsFacts } from './entry-last-digits';
import type { EntryMeaning } from './entry-meaning';
import { gaugeMeaning, type GaugeQuestion, type GaugeSetting } from './gauge-meaning';

/** What is asked in the entry line: how a length is meant, or which size a few figures are the last of. */
export type EntryQuestionCode = GaugeQuestion | 'last-digits';

/** What a text means at the bench: as it stands, or as the last figures of a size. */
export type EntryReading =
  | Exclude<EntryMeaning, { kind: 'question' }>
  | { kind: 'question'; code: EntryQuestionCode; meanings: LengthMeaning[] };

/**
 * What a text means where only the last figures may be typed; `last` is null where they may not.
 *
 * A size made up from its last figures is a plain length: the text stays what was typed, as it does
 * for `+0.02`.
 */
export function entryReading(
  text: string,
  setting: GaugeSetting,
  last: LastDigitsFacts | null,
): EntryReading {
  const found = last === null ? null : entryLastDigits(text, last);
  if (found === null) return gaugeMeaning(text, setting);
  const meanings = lastDigitsMeanings(found, setting.unit);
  return meanings.length === 1
    ? { kind: 'length', meaning: meanings[0]! }
    : { kind: 'question', code: 'last-digits', meanings };
}

/** The lengths a few figures may stand for, as the parser would give them. */
export function lastDigitsMeanings(
  { sizesPm, resolutionPm }: { sizesPm: readonly number[]; resolutionPm: number },
  unit: LengthMeaning['unit'],
): LengthMeaning[] {
  return sizesPm.map((pm) => ({ pm, isRelative: false, resolutionPm, sizePm: pm, unit }));
}
