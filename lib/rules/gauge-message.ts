import type { GaugeSends } from '@/lib/schema/gauge';
import type { DecimalMark } from '@/lib/units/picometres';

/** What of a text is the reading: without what the gauge writes before every one and means nothing by. */
export function gaugeMessage(text: string, gauge: Pick<GaugeSends, 'sendsPrefix'> | null): string {
  const prefix = gauge?.sendsPrefix ?? null;
  if (prefix === null || prefix === '') return text;
  const from = text.length - text.trimStart().length;
  return text.startsWith(prefix, from) ? text.slice(from + prefix.length) : text;
}

/**
 * The decimal mark a text is read with: that of the gauge where the text has it, else the person's own, since
 * somebody typed it by hand.
 */
export function gaugeMark(
  text: string,
  gauge: Pick<GaugeSends, 'sendsMark'> | null,
  own: DecimalMark,
): DecimalMark {
  const mark = gauge?.sendsMark ?? null;
  return mark !== null && text.includes(mark) ? mark : own;
}

/**
 * Whether a text is all that this gauge would send: its figures with as many decimals as it was seen to
 * write, its own mark, and its unit where it writes one. A fraction or a half-typed figure is not.
 */
export function isWholeMessage(text: string, gauge: GaugeSends): boolean {
  const found = whole.exec(gaugeMessage(text, gauge));
  if (found === null) return false;
  const [, before = '', mark, places = '', unit = ''] = found;
  if (before === '' && places === '') return false;
  if (mark !== undefined && gauge.sendsMark !== null && mark !== gauge.sendsMark) return false;
  if (gauge.sendsUnit === 'says' && unit === '') return false;
  return places.length >= (gauge.sendsPlaces ?? 1);
}

const whole = /^\s*[+\-\u2212]?\s*(\d*)(?:([.,])(\d+))?\s*(mm|in|inch|")?\s*$/i;
