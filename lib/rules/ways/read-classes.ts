import { MathsInputError } from '@/lib/maths/check';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { fitLimits, type FitLimits } from '@/lib/maths/iso286/fit-limits';
import { gradeNames, shaftDeviationUm } from '@/lib/maths/iso286/tables';

/** One half of a pair of classes: deviations from the nominal, pm. */
export type HalfLimits = { text: string; upperPm: number; lowerPm: number };

export type ClassesFault =
  | { code: 'empty' | 'no-nominal' }
  | { code: 'character'; character: string }
  | { code: 'no-grade' | 'mixed-case' | 'grade' | 'not-defined'; text: string }
  | { code: 'letters'; letters: string }
  | { code: 'alone'; text: string; side: 'internal' | 'external' }
  | { code: 'same-side'; texts: [string, string]; side: 'internal' | 'external' }
  | { code: 'too-many'; text: string }
  | { code: 'size' };

export type ReadClasses =
  | {
      kind: 'classes';
      /** As it is written: hole first, H7/g6. */
      text: string;
      hole: HalfLimits;
      shaft: HalfLimits;
      minPm: number;
      maxPm: number;
      fit: FitLimits['kind'];
    }
  | { kind: 'wrong'; fault: ClassesFault };

const pmPerUm = 1_000_000;
const mmPerPm = 1e-9;

/**
 * Reads a pair of ISO 286 classes as typed, `H7/g6`, `H7 g6`, `g6 H7`: a capital is the hole, whichever
 * stands first; with the limits of both at the nominal size and the clearances they leave.
 *
 * What is no pair of classes comes back as the first thing that is wrong with it.
 */
export function readClasses(typed: string, nominalPm: number | null): ReadClasses {
  const wrong = (fault: ClassesFault): ReadClasses => ({ kind: 'wrong', fault });
  const text = typed.trim();
  if (text === '') return wrong({ code: 'empty' });
  const halves = halvesOf(text);
  if ('code' in halves) return wrong(halves);
  for (const half of halves) {
    const fault = faultOf(half);
    if (fault !== null) return wrong(fault);
  }
  const [one, two, third] = halves;
  if (third !== undefined) return wrong({ code: 'too-many', text: third });
  if (two === undefined) return wrong({ code: 'alone', text: one!, side: sideOf(one!) });
  if (sideOf(one!) === sideOf(two)) {
    return wrong({ code: 'same-side', texts: [one!, two], side: sideOf(two) });
  }
  if (nominalPm === null) return wrong({ code: 'no-nominal' });
  const [hole, shaft] = sideOf(one!) === 'internal' ? [one!, two] : [two, one!];
  const nominalMm = nominalPm * mmPerPm;
  for (const half of [hole, shaft]) {
    const fault = undefinedAt(half, nominalMm);
    if (fault !== null) return wrong(fault);
  }
  const limits = fitLimits(`${hole}/${shaft}`, nominalMm);
  const pm = (um: number) => Math.round(um * pmPerUm);
  const side = (half: string, { upperUm, lowerUm }: FitLimits['hole']): HalfLimits => ({
    text: half,
    upperPm: pm(upperUm),
    lowerPm: pm(lowerUm),
  });
  return {
    kind: 'classes',
    text: `${hole}/${shaft}`,
    hole: side(hole, limits.hole),
    shaft: side(shaft, limits.shaft),
    minPm: pm(limits.minClearanceUm),
    maxPm: pm(limits.maxClearanceUm),
    fit: limits.kind,
  };
}

/** Letters and figures in turn, between blanks, commas and one stroke; or the character that is neither. */
function halvesOf(text: string): string[] | ClassesFault {
  const found: string[] = [];
  let at = 0;
  while (at < text.length) {
    const gap = /^(?:[\s\u00a0]*[/,\u2044]?[\s\u00a0]*)/.exec(text.slice(at))![0];
    at += gap.length;
    const half = /^[A-Za-z]+\d*/.exec(text.slice(at))?.[0];
    if (half === undefined) {
      return at < text.length
        ? { code: 'character', character: String.fromCodePoint(text.codePointAt(at)!) }
        : found;
    }
    found.push(half);
    at += half.length;
  }
  return found;
}

function faultOf(half: string): ClassesFault | null {
  const letters = half.replace(/\d+$/, '');
  const grade = half.slice(letters.length);
  if (letters !== letters.toUpperCase() && letters !== letters.toLowerCase()) {
    return { code: 'mixed-case', text: letters };
  }
  if (!known.has(letters.toLowerCase())) return { code: 'letters', letters };
  if (grade === '') return { code: 'no-grade', text: half };
  return gradeNames.some((name) => name === `IT${grade}`) ? null : { code: 'grade', text: half };
}

function undefinedAt(half: string, nominalMm: number): ClassesFault | null {
  try {
    classLimits(half, nominalMm);
    return null;
  } catch (error) {
    if (!(error instanceof MathsInputError)) throw error;
    return error.code.endsWith('/size') ? { code: 'size' } : { code: 'not-defined', text: half };
  }
}

function sideOf(half: string): 'internal' | 'external' {
  return half < 'a' ? 'internal' : 'external';
}

/** Every letter and pair of letters the standard gives, in small letters. */
const known = new Set([
  ...Object.keys(shaftDeviationUm).filter((name) => !name.startsWith('j')),
  'j',
  'js',
]);
