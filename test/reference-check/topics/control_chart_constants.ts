import { controlChartConstants } from '@/lib/maths/control/control-chart-constants';
import { medianMovingRangeFactor } from '@/lib/maths/control/median-moving-range-factor';
import { rangeMoments } from '@/lib/maths/control/range-moments';
import { d2Star } from '@/lib/maths/gauge/d2-star';

export const topic = 'Control-chart constants';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const { n, m, g, trials, appraisers, parts } = inputs;
  if (typeof n === 'number') {
    const constants = controlChartConstants(n, inputs.sigma_multiple as number | undefined);
    return { ...constants, '1/c4': 1 / constants.c4, '1/d2': 1 / constants.d2 };
  }
  if (typeof m === 'number') return { d2_star: d2Star(m, g as number) };
  const factors = {
    ...(Array.isArray(trials) && { K1: trials.map((count) => 1 / rangeMoments(count).d2) }),
    ...(Array.isArray(appraisers) && { K2: appraisers.map((count) => 1 / d2Star(count, 1)) }),
    ...(Array.isArray(parts) && { K3: parts.map((count) => 1 / d2Star(count, 1)) }),
  };
  if (Object.keys(factors).length > 0) return factors;
  const factor = medianMovingRangeFactor();
  return { d4_n2: factor, individuals_factor_3_over_d4: 3 / factor };
}
