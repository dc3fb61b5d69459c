import { oneWayAnova } from '@/lib/maths/statistics/one-way-anova';

export const topic = 'One-way analysis of variance';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const table = oneWayAnova(inputs.groups as number[][]);
  return {
    df_between: table.betweenDegrees,
    ss_between: table.betweenSquares,
    ms_between: table.betweenMeanSquare,
    F: table.f ?? null,
    df_within: table.withinDegrees,
    ss_within: table.withinSquares,
    ms_within: table.withinMeanSquare,
    r_squared: table.rSquared ?? null,
    residual_sd: table.residualSd,
  };
}
