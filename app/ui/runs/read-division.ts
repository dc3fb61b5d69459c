import { lengthWords } from '@/lib/text/length-words';
import { noDivisionWords } from '@/lib/text/offset-words';
import type { Shown } from '@/lib/text/shown-size';
import { parseLength } from '@/lib/units/parse-length';

/** One division of a dial as it was typed, or what is wrong with it. */
export function readDivision(text: string, { decimal, unit }: Shown): { pm: number } | string {
  const read = parseLength(text, { decimal, unit });
  if (read.kind !== 'length') return lengthWords(read, text);
  return read.pm > 0 ? { pm: read.pm } : noDivisionWords;
}
