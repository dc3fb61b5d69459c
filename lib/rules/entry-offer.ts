import type { LengthMeaning } from '@/lib/units/parse-length';
import { entryLastDigits, type LastDigitsFacts } from './entry-last-digits';
import { lastDigitsMeanings } from './entry-reading';
import { slipOf } from './slip';
import type { SlipFacts } from './slips/slip-facts';

/**
 * The sizes that are offered for a text typed while whole sizes are expected: first what it would be as
 * last figures, the text as it stands at the end; null where nothing is offered.
 *
 * It is offered only where the text as it stands would be asked about as a slip and one of the others
 * would not. Nothing is taken without an answer.
 */
export function entryOffer(
  text: string,
  plain: LengthMeaning,
  last: LastDigitsFacts | null,
  facts: SlipFacts,
): LengthMeaning[] | null {
  const found = last === null ? null : entryLastDigits(text, last);
  if (found === null) return null;
  // Figures without a mark are held against the others to the step of the gauge, not to a millimetre.
  const asTyped = { text, valuePm: plain.sizePm, resolutionPm: found.resolutionPm };
  if (slipOf(asTyped, facts) === null) return null;
  const calm = lastDigitsMeanings(found, plain.unit).filter(
    ({ sizePm }) =>
      sizePm !== plain.sizePm &&
      slipOf({ text: '', valuePm: sizePm, resolutionPm: found.resolutionPm }, facts) === null,
  );
  return calm.length === 0 ? null : [...calm, plain];
}
