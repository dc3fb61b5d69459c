import { MathsInputError } from '@/lib/maths/check';
import { fundamentalDeviation } from '@/lib/maths/iso286/fundamental-deviation';
import { itGrade } from '@/lib/maths/iso286/it-grade';
import { gradeNames, type Grade } from '@/lib/maths/iso286/tables';
import { toleranceClass } from '@/lib/maths/iso286/tolerance-class';
import { iso286Question } from './iso286-question';

export const topic = 'Fundamental deviations of shafts and holes';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const single = iso286Question(inputs, 'deviation');
  if (single !== undefined) return single;
  const sizeMm = inputs.up_to_and_including_mm as number;
  return sizeMm > 500
    ? { shaft: shaftsOver500(sizeMm), hole: holesOver500(sizeMm), grades: gradesOver500(sizeMm) }
    : { shaft: shafts(sizeMm), hole: holes(sizeMm), delta: deltas(sizeMm) };
}

const letters = 'a b c cd d e ef f fg g h m n p r s t u v x y z za zb zc'.split(' ');

function shafts(sizeMm: number): Record<string, unknown> {
  const plain = letters.map((name) => [name, deviation(`${name}6`, sizeMm)]);
  return {
    ...Object.fromEntries(plain),
    'j5,j6': both('j5', 'j6', sizeMm),
    j7: deviation('j7', sizeMm),
    j8: deviation('j8', sizeMm),
    'k4-k7': both('k4', 'k7', sizeMm),
    k_other: both('k3', 'k8', sizeMm),
  };
}

function holes(sizeMm: number): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  for (const name of letters.map((letter) => letter.toUpperCase())) {
    if (name !== 'M' && name !== 'N') found[name] = deviation(`${name}8`, sizeMm);
  }
  for (const name of ['J6', 'J7', 'J8']) found[name] = deviation(name, sizeMm);
  for (const name of ['K', 'M', 'N']) {
    found[`${name}_upto_IT8`] = corrected(name, sizeMm);
    found[`${name}_above_IT8`] = deviation(`${name}9`, sizeMm);
  }
  return found;
}

/** ES of grades 7 and 8 as one base with and without its delta: the two must agree. */
function corrected(name: string, sizeMm: number): unknown {
  const [at7, at8] = [deviation(`${name}7`, sizeMm), deviation(`${name}8`, sizeMm)];
  if (at7 === null || at8 === null) return null;
  const plus = at8 - at7 === delta('IT8', sizeMm) - delta('IT7', sizeMm) && at8 !== at7;
  return { base: plus ? at8 - delta('IT8', sizeMm) : at8, plus_delta: plus };
}

function deltas(sizeMm: number): Record<string, number> {
  const grades: Grade[] = ['IT3', 'IT4', 'IT5', 'IT6', 'IT7', 'IT8'];
  return Object.fromEntries(grades.map((grade) => [grade, sizeMm <= 3 ? 0 : delta(grade, sizeMm)]));
}

function delta(grade: Grade, sizeMm: number): number {
  return itGrade(grade, sizeMm) - itGrade(gradeNames[gradeNames.indexOf(grade) - 1]!, sizeMm);
}

const shaftsOver = ['d', 'e', 'f', 'g', 'h', 'k', 'm', 'n', 'p', 'r', 's', 't', 'u'];

function shaftsOver500(sizeMm: number): Record<string, unknown> {
  return Object.fromEntries(shaftsOver.map((name) => [name, deviation(`${name}7`, sizeMm)]));
}

function holesOver500(sizeMm: number): Record<string, unknown> {
  const names = shaftsOver.map((name) => name.toUpperCase());
  return Object.fromEntries(names.map((name) => [name, deviation(`${name}7`, sizeMm)]));
}

/** The grades that H and K are defined in, in the words of the set. */
function gradesOver500(sizeMm: number): string {
  const used = (letter: string) =>
    gradeNames.filter((grade) => deviation(`${letter}${grade.slice(2)}`, sizeMm) !== null);
  const [wide, narrow] = [used('H'), used('K')];
  return `${narrow[0]} to ${narrow.at(-1)} (${wide[0]}-${wide.at(-1)} for D to H)`;
}

function both(first: string, second: string, sizeMm: number): number | null {
  const [a, b] = [deviation(first, sizeMm), deviation(second, sizeMm)];
  if (a !== b) throw new Error(`${first} and ${second} differ at ${sizeMm} mm`);
  return a;
}

function deviation(text: string, sizeMm: number): number | null {
  try {
    return fundamentalDeviation(toleranceClass(text), sizeMm).deviationUm;
  } catch (error) {
    if (error instanceof MathsInputError && error.code.endsWith('/not-defined')) return null;
    throw error;
  }
}
