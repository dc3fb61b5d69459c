import type { ParsedLength } from '@/lib/units/parse-length';

type Trouble =
  | { kind: 'error'; code: string; character: string }
  | { kind: 'question'; code: string }
  | 'order'
  | 'aim outside';

/** What is wrong with a typed length in a form, or what has to be said more plainly. */
export function lengthWords(
  problem: Exclude<ParsedLength, { kind: 'length' }> | Trouble,
  text: string,
): string {
  if (problem === 'order') return 'The most must be more than the least.';
  if (problem === 'aim outside') return 'The aim must lie between the least and the most.';
  if (problem.kind === 'question') return questionWords(problem.code, text);
  return errorWords(problem.code, problem.character, text);
}

function questionWords(code: string, text: string): string {
  switch (code) {
    case 'fraction-unit':
      return `${text} of what? Add "in" after the fraction, or type it as a decimal.`;
    case 'unit-tenths':
      return 'A tenth of a millimetre or of a thou? Type it as a decimal.';
    case 'unit-mil':
      return 'A mil is a millimetre to some and a thou to others. Type mm or thou.';
    case 'sign-large':
      return `Is ${text} a size, or so much beside the nominal? Leave the sign out, or type the size.`;
    default:
      return `${text} can be read in two ways. Type it without the mark that groups the figures.`;
  }
}

function errorWords(code: string, character: string, text: string): string {
  switch (code) {
    case 'empty':
      return 'A size is needed here.';
    case 'no-nominal':
      return 'A sign needs a nominal to add to. Type the whole size.';
    case 'finer-than-picometre':
    case 'not-whole-picometres':
      return `"${text}" is finer than this notebook keeps. Type fewer figures.`;
    case 'too-long':
      return `"${text}" is longer than any part. Look at the point.`;
    case 'tolerance':
      return `"${text}" is a tolerance. Type one size.`;
    default: {
      const at = character === '' ? '' : ` at "${character}"`;
      return `"${text}" is not a size${at}. Type it again.`;
    }
  }
}
