import { oneSidedToleranceFactor } from '@/lib/maths/distributions/one-sided-tolerance-factor';
import { oneSidedToleranceFactorQuick } from '@/lib/maths/distributions/one-sided-tolerance-factor-quick';
import { twoSidedToleranceFactor } from '@/lib/maths/distributions/two-sided-tolerance-factor';
import { twoSidedToleranceFactorQuick } from '@/lib/maths/distributions/two-sided-tolerance-factor-quick';

export const topic = 'Statistical tolerance factors';

type Factor = (n: number, content: number, confidence: number) => number;

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const { n, coverage, confidence } = inputs as {
    n: number | number[];
    coverage: number | number[];
    confidence: number;
  };
  if (!Array.isArray(n) && !Array.isArray(coverage)) {
    return ofOneSample(n, coverage, confidence, inputs);
  }
  const along = (factor: (p: number) => number) =>
    Array.isArray(coverage) ? coverage.map(factor) : factor(coverage);
  const table = (factor: Factor) => {
    const row = (size: number) => along((p) => factor(size, p, confidence));
    return Array.isArray(n) ? n.map(row) : row(n);
  };
  return {
    k2_exact: table(twoSidedToleranceFactor),
    k2_howe: table(twoSidedToleranceFactorQuick),
    k1_exact: table(oneSidedToleranceFactor),
    k1_natrella: table(oneSidedToleranceFactorQuick),
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
  const k1 = oneSidedToleranceFactorQuick(n, coverage, confidence);
  const between = [mean - k2 * s, mean + k2 * s];
  return {
    k2_howe: k2,
    k1_natrella: k1,
    k1_exact: oneSidedToleranceFactor(n, coverage, confidence),
    k2_exact: twoSidedToleranceFactor(n, coverage, confidence),
    two_sided_howe: between,
    upper_natrella: mean + k1 * s,
    k2,
    k1,
    two_sided: between,
    upper: mean + k1 * s,
  };
}
