import { MathsInputError } from '@/lib/maths/check';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { fitLimits } from '@/lib/maths/iso286/fit-limits';
import { fundamentalDeviation } from '@/lib/maths/iso286/fundamental-deviation';
import { itGrade } from '@/lib/maths/iso286/it-grade';
import type { Grade } from '@/lib/maths/iso286/tables';
import { toleranceClass } from '@/lib/maths/iso286/tolerance-class';

type Answers = Record<string, unknown>;

/**
 * The answer to a single question of ISO 286, whichever of its three files it stands in, or undefined
 * when it is none: `{grade, size_mm}`, `{class, size_mm}` or `{nominal_mm, hole, shaft}`. What the
 * standard does not define is an `error`; where only the deviation is wanted a class has one in grades
 * that are not used at the size. The size goes by either name.
 */
export function iso286Question(
  inputs: Answers,
  wanted: 'limits' | 'deviation' = 'limits',
): Answers | undefined {
  const size = (inputs.size_mm ?? inputs.nominal_mm) as number | null | undefined;
  const isSingle = 'size_mm' in inputs || 'nominal_mm' in inputs;
  if (!isSingle) return undefined;
  const sizeMm = size ?? NaN;
  try {
    if (inputs.grade !== undefined) return ofGrade(inputs.grade, sizeMm);
    if (inputs.class !== undefined) return ofClass(String(inputs.class), sizeMm, wanted);
    return ofFit(String(inputs.fit ?? `${inputs.hole}/${inputs.shaft}`), sizeMm);
  } catch (error) {
    if (error instanceof MathsInputError) return { error: error.message };
    throw error;
  }
}

/** A grade written IT7, "7" or 7. */
function ofGrade(written: unknown, sizeMm: number): Answers {
  const grade = `IT${String(written).replace(/^IT/i, '')}` as Grade;
  const um = itGrade(grade, sizeMm);
  return { um, value_um: um, it_um: um, IT_um: um, tolerance_um: um, [grade]: um };
}

function ofClass(written: string, sizeMm: number, wanted: 'limits' | 'deviation'): Answers {
  const of = toleranceClass(written);
  if (of.letters === 'js') return limitsOf(written, sizeMm);
  const um = fundamentalDeviation(of, sizeMm).deviationUm;
  const deviation = { um, deviation_um: um, fundamental_deviation_um: um };
  return wanted === 'deviation' ? deviation : { ...deviation, ...limitsOf(written, sizeMm) };
}

/** Limits of a class by all their names. */
function limitsOf(written: string, sizeMm: number): Answers {
  const { side, upperUm, lowerUm } = classLimits(written, sizeMm);
  const [upper, lower] = side === 'internal' ? ['ES', 'EI'] : ['es', 'ei'];
  return {
    upper_um: upperUm,
    lower_um: lowerUm,
    upper_lower_um: [upperUm, lowerUm],
    [upper]: upperUm,
    [lower]: lowerUm,
    [`${upper}_um`]: upperUm,
    [`${lower}_um`]: lowerUm,
    tolerance_um: itGrade(toleranceClass(written).grade, sizeMm),
    max_mm: sizeMm + upperUm / 1000,
    min_mm: sizeMm + lowerUm / 1000,
  };
}

function ofFit(written: string, nominalMm: number): Answers {
  const found = fitLimits(written, nominalMm);
  return {
    hole_um: [found.hole.upperUm, found.hole.lowerUm],
    shaft_um: [found.shaft.upperUm, found.shaft.lowerUm],
    max_clearance_um: found.maxClearanceUm,
    min_clearance_um: found.minClearanceUm,
    kind: found.kind,
  };
}
