import { MathsInputError } from '../check';
import { gradeNames, shaftDeviationUm, type Grade } from './tables';

/** A class such as H7 or js9, taken apart. */
export type ToleranceClass = {
  /** Capitals are holes, small letters shafts. */
  side: 'internal' | 'external';
  /** Letters of the class in small letters: `h`, `js`, `zc`. */
  letters: string;
  grade: Grade;
  /** As it is written: `H7`. */
  text: string;
};

/**
 * Reads a tolerance class as typed: `H7`, `g6`, `js9`, `ZC8`, `h01`.
 *
 * One or two letters of the standard, all capitals or all small, and a grade
 * from 01 to 18; blanks around it do not matter. Whether the class is defined
 * at a size is for classLimits to say. Source: [iso-286-1].
 *
 * @throws {MathsInputError} `tolerance-class/text`
 *
 * @example
 * toleranceClass('g6'); // { side: 'external', letters: 'g', grade: 'IT6', text: 'g6' }
 */
export function toleranceClass(typed: string): ToleranceClass {
  const text = typed.trim();
  const [, written = '', number = ''] = /^([a-z]{1,2}|[A-Z]{1,2})(\d{1,2})$/.exec(text) ?? [];
  const letters = written.toLowerCase();
  const grade = gradeNames.find((name) => name === `IT${number}`);
  if (grade === undefined || !known.has(letters)) {
    throw new MathsInputError(
      'tolerance-class/text',
      `toleranceClass requires a class such as H7 or js9, got ${JSON.stringify(typed)}`,
    );
  }
  return { side: written === letters ? 'external' : 'internal', letters, grade, text };
}

const known = new Set([
  ...Object.keys(shaftDeviationUm).filter((name) => !name.startsWith('j')),
  'j',
  'js',
]);
