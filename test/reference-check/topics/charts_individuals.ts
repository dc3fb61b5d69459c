import { individualsLimits } from '@/lib/maths/control/individuals-limits';
import { rangeMoments } from '@/lib/maths/control/range-moments';

export const topic = 'Individuals and moving-range charts';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const limits = individualsLimits({ values: inputs.x as number[] });
  return {
    xbar: limits.mean,
    mr_bar: limits.movingRangeMean,
    sigma_hat: limits.sigma,
    ucl_x: limits.upper,
    lcl_x: limits.lower,
    ucl_mr: limits.movingRangeUpper,
    lcl_mr: 0,
    d2_used: rangeMoments(2).d2,
  };
}
