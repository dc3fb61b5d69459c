import { chiSquareQuantile } from '@/lib/maths/distributions/chi-square-quantile';
import { fQuantile } from '@/lib/maths/distributions/f-quantile';
import { noncentralTQuantile } from '@/lib/maths/distributions/noncentral-t-quantile';
import { normalQuantile } from '@/lib/maths/distributions/normal-quantile';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';

export const topic = 'Quantiles of normal, t, chi-square, F';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const p = [inputs.p].flat() as number[];
  const name = String(inputs.distribution).toLowerCase();
  if (name === 'normal') return { q: p.map(normalQuantile) };
  if (name === 'f') {
    return {
      q: (inputs.df as [number, number][]).map(([a, b]) => p.map((x) => fQuantile(x, a, b))),
    };
  }
  const degrees = [inputs.nu ?? inputs.df].flat() as number[];
  if (name.includes('noncentral')) {
    const delta = inputs.delta as number;
    return { q: degrees.map((nu) => p.map((x) => noncentralTQuantile(x, nu, delta))) };
  }
  const quantile = name.includes('chi') ? chiSquareQuantile : studentTQuantile;
  return { q: degrees.map((nu) => p.map((x) => quantile(x, nu))) };
}
