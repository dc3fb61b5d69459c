import { lagOneAutocorrelation } from '@/lib/maths/statistics/lag-one-autocorrelation';
import { mean } from '@/lib/maths/statistics/mean';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';

export const topic = 'Univariate summary statistics';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const data = inputs.data as number[];
  return {
    mean: mean(data),
    sd: standardDeviation(data),
    lag1_autocorrelation: lagOneAutocorrelation(data),
  };
}
