import type { LengthError } from '@/lib/units/parse-length';

export type EntryError = {
  code: LengthError | 'not-above-zero' | 'alone-sign' | 'text-too-long';
  /** What stands where it goes wrong; '' at the end of the text. */
  character: string;
};

/**
 * What is wrong with a text that is no size, the character named where there is one, and what became of it.
 *
 * @example entryErrorWords('18..2', { code: 'two-marks', character: '.' })
 * // '"18..2" is not a size: a second ".". Type it again; nothing was kept.'
 */
export function entryErrorWords(text: string, { code, character }: EntryError): string {
  const typed = text.trim();
  const shown = typed.length > 24 ? `${typed.slice(0, 23)}\u2026` : typed;
  return `"${shown}" is not a size: ${faultOf(code, character)}. Type it again; nothing was kept.`;
}

function faultOf(code: EntryError['code'], character: string): string {
  const named = character === '' ? 'its end' : `"${character}"`;
  switch (code) {
    case 'empty':
      return 'there is nothing in it';
    case 'alone-sign':
      return 'a sign alone';
    case 'no-digits':
    case 'no-number':
      return 'there is no figure in it';
    case 'not-a-number':
      return `a number does not begin with ${named}`;
    case 'two-marks':
      return `a second ${named}`;
    case 'two-numbers':
      return `a second number at ${named}`;
    case 'two-signs':
      return `a second sign ${named}`;
    case 'not-a-fraction':
      return `no fraction of an inch at ${named}`;
    case 'zero-below':
      return 'nothing is divided by nothing';
    case 'tolerance':
      return `${named} gives a tolerance, not a reading`;
    case 'unknown-unit':
      return `no unit begins with ${named}`;
    case 'two-units':
      return `a second unit at ${named}`;
    case 'not-understood':
      return `what stands at ${named} says nothing`;
    case 'finer-than-picometre':
    case 'not-whole-picometres':
      return 'it is finer than anything measured';
    case 'too-long':
    case 'text-too-long':
      return 'it is too long';
    case 'no-nominal':
      return `${named} needs a nominal to be measured from`;
    case 'not-above-zero':
      return 'a size is more than nothing';
  }
}
