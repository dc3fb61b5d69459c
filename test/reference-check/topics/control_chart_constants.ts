import { controlChartConstants } from '@/lib/maths/control/control-chart-constants';
import { medianMovingRangeFactor } from '@/lib/maths/control/median-moving-range-factor';
import { rangeMoments } from '@/lib/maths/control/range-moments';
import { d2Star } from '@/lib/maths/gauge/d2-star';

export const topic = 'Control-chart constants';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (typeof inputs.n === 'number') {
    const constants = controlChartConstants(inputs.n);
    return { ...constants, '1/c4': 1 / constants.c4, '1/d2': 1 / constants.d2 };
  }
  if (Array.isArray(inputs.trials)) {
    return { K1: (inputs.trials as number[]).map((trials) => 1 / rangeMoments(trials).d2) };
  }
  if (Array.isArray(inputs.appraisers)) {
    return { K2: (inputs.appraisers as number[]).map((operators) => 1 / d2Star(operators, 1)) };
  }
  const factor = medianMovingRangeFactor();
  return { d4_n2: factor, individuals_factor_3_over_d4: 3 / factor };
}
