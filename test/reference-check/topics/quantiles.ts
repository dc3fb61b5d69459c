import { chiSquareQuantile } from '@/lib/maths/distributions/chi-square-quantile';
import { fQuantile } from '@/lib/maths/distributions/f-quantile';
import { normalQuantile } from '@/lib/maths/distributions/normal-quantile';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';

export const topic = 'Quantiles of normal, t, chi-square, F';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const p = inputs.p as number[];
  if (inputs.distribution === 'normal') return { q: p.map(normalQuantile) };
  if (inputs.distribution === 'F') {
    return {
      q: (inputs.df as [number, number][]).map(([a, b]) => p.map((x) => fQuantile(x, a, b))),
    };
  }
  const quantile = inputs.distribution === 't' ? studentTQuantile : chiSquareQuantile;
  return { q: (inputs.nu as number[]).map((nu) => p.map((x) => quantile(x, nu))) };
}
