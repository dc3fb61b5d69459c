import { MathsInputError } from '@/lib/maths/check';
import { oneSidedToleranceFactor } from '@/lib/maths/distributions/one-sided-tolerance-factor';
import { oneSidedToleranceFactorQuick } from '@/lib/maths/distributions/one-sided-tolerance-factor-quick';
import { twoSidedToleranceFactor } from '@/lib/maths/distributions/two-sided-tolerance-factor';
import { twoSidedToleranceFactorQuick } from '@/lib/maths/distributions/two-sided-tolerance-factor-quick';

export const topic = 'Statistical tolerance factors';

type Factor = (n: number, content: number, confidence: number) => number | null;

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const { n, coverage, confidence } = inputs as {
    n: number | number[];
    coverage: number | number[];
    confidence: number;
  };
  if (!Array.isArray(n) && !Array.isArray(coverage)) {
    return ofOneSample(n, coverage, confidence, inputs);
  }
  const along = (factor: (p: number) => number | null) =>
    Array.isArray(coverage) ? coverage.map(factor) : factor(coverage);
  const table = (factor: Factor) => {
    const row = (size: number) => along((p) => factor(size, p, confidence));
    return Array.isArray(n) ? n.map(row) : row(n);
  };
  return {
    k2_exact: table(twoSidedToleranceFactor),
    k2_howe: table(twoSidedToleranceFactorQuick),
    k1_exact: table(oneSidedToleranceFactor),
    k1_natrella: table(natrella),
  };
}

function ofOneSample(
  n: number,
  coverage: number,
  confidence: number,
  inputs: Record<string, unknown>,
) {
  const { mean, s } = inputs as { mean: number; s: number };
  const k2 = twoSidedToleranceFactorQuick(n, coverage, confidence);
  const k1 = natrella(n, coverage, confidence);
  const upper = k1 === null ? null : mean + k1 * s;
  const between = [mean - k2 * s, mean + k2 * s];
  return {
    k2_howe: k2,
    k1_natrella: k1,
    k1_exact: oneSidedToleranceFactor(n, coverage, confidence),
    k2_exact: twoSidedToleranceFactor(n, coverage, confidence),
    two_sided_howe: between,
    upper_natrella: upper,
    k2,
    k1,
    two_sided: between,
    upper,
  };
}

/** Natrella's formula has no answer for a few pieces; the exact factor has. */
function natrella(n: number, content: number, confidence: number): number | null {
  try {
    return oneSidedToleranceFactorQuick(n, content, confidence);
  } catch (error) {
    if (error instanceof MathsInputError) return null;
    throw error;
  }
}
