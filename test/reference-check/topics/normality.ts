import { andersonDarlingTest } from '@/lib/maths/statistics/anderson-darling-test';
import { shapiroWilkTest } from '@/lib/maths/statistics/shapiro-wilk-test';

export const topic = 'Shapiro-Wilk and Anderson-Darling tests';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const x = inputs.x as number[];
  if (/shapiro/i.test(String(inputs.test))) {
    const { w, p } = shapiroWilkTest(x);
    return { W: w, p, W_1965: w };
  }
  const { aSquared, aSquaredStar, p } = andersonDarlingTest(x);
  return { A2: aSquared, A2_star: aSquaredStar, p };
}
