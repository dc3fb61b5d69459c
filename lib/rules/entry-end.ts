import type { GaugeSends } from '@/lib/schema/gauge';
import { isAtPace, type EntryBurst } from './entry-burst';
import { isWholeMessage } from './gauge-message';

/** Where nobody has said how long: no key for so long, after a whole number, and it was all. */
const usualPauseMs = 150;

/** The second half of a pair of ends (Enter as two keys, a comma and a space) comes this soon. */
const pairMs = 200;

/**
 * Whether a comma that comes after `text` is the end of the message and no part of the number.
 *
 * Only for a gauge taught so, and only behind all that it sends: behind `18` alone, from a gauge that
 * writes `18.003`, it is the decimal comma of a person. Time has no say in it.
 */
export function endsWithComma(text: string, gauge: GaugeSends | null): boolean {
  return gauge?.sendsEnd === 'comma' && isWholeMessage(text, gauge);
}

/**
 * How long without another key makes what stands in the line a message, ms; null where only an end that is
 * pressed does.
 *
 * Only for gauges taught so: one that ends its message with nothing, and one that ends it with a space,
 * which may be followed by a unit when a hand types. A hand is told by its gaps: one of them as long as the
 * pause, and the text is the person's, who ends it with Enter. Fewer than three characters are never sent.
 * Two messages without a gap between them end too: one is not shown to be the other, and neither is kept
 * without a word.
 */
export function endsAfterMs(
  text: string,
  gauge: GaugeSends | null,
  burst: EntryBurst,
): number | null {
  const end = gauge?.sendsEnd ?? null;
  if (gauge === null || (end !== 'nothing' && end !== 'space')) return null;
  if (end === 'space' && !text.endsWith(' ')) return null;
  const pauseMs = gauge.sendsPauseMs ?? usualPauseMs;
  const isAll = isWholeMessage(text, gauge) || (end === 'nothing' && isSeveral(text, gauge));
  return isAll && isAtPace(burst, pauseMs) ? pauseMs : null;
}

/**
 * Whether an end pressed at `atMs` on an empty line only belongs to the one before: CR and LF arrive as two
 * Enters, or as Enter and Tab, and the second means nothing. A person's second Enter comes later.
 */
export function isSecondEnd(lastEndMs: number | null, atMs: number): boolean {
  return lastEndMs !== null && atMs - lastEndMs >= 0 && atMs - lastEndMs < pairMs;
}

/**
 * One of two equal messages that came as one, because the gauge ends them with nothing and its button
 * bounced; null where it is not so. Two decimal marks are in no number, so that nothing is lost by asking.
 */
export function halfOfDouble(text: string, gauge: GaugeSends | null): string | null {
  if (gauge?.sendsEnd !== 'nothing') return null;
  const half = text.slice(0, text.length / 2);
  const isDouble = /[.,]/.test(half) && half + half === text;
  return isDouble && isWholeMessage(half, gauge) ? half : null;
}

/** More than one decimal mark, and all the decimals behind the last: more than one whole number. */
function isSeveral(text: string, gauge: GaugeSends): boolean {
  const [, before, last] = /^(.*)[.,](\d+)$/.exec(text) ?? [];
  return /[.,]/.test(before ?? '') && last!.length >= (gauge.sendsPlaces ?? 1);
}
