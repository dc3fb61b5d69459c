import { individualsLimits } from '@/lib/maths/control/individuals-limits';
import { rangeMoments } from '@/lib/maths/control/range-moments';

export const topic = 'Individuals and moving-range charts';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const x = inputs.x as number[];
  const events = (inputs.events_before_1based ?? []) as number[];
  const eventsBefore = events.map((place) => place - 1);
  const limits = individualsLimits({ values: x, eventsBefore });
  const byMedian = individualsLimits({ values: x, eventsBefore, sigmaFrom: 'median moving range' });
  const outside = x.flatMap((value, i) =>
    value > limits.upper || value < limits.lower ? [i + 1] : [],
  );
  return {
    n: x.length,
    xbar: limits.mean,
    mr_bar: limits.movingRangeMean,
    sigma_hat: limits.sigma,
    ucl_x: limits.upper,
    lcl_x: limits.lower,
    ucl_mr: limits.movingRangeUpper,
    lcl_mr: 0,
    d2_used: rangeMoments(2).d2,
    out_of_control: outside,
    sigma_hat_median_mr: byMedian.sigma,
    ucl_x_median_mr: byMedian.upper,
    lcl_x_median_mr: byMedian.lower,
  };
}
