import { leastSquares } from '@/lib/maths/statistics/least-squares';

export const topic = 'Linear least-squares regression';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const { model, x, y } = inputs as { model: string; x: (number | number[])[]; y: number[] };
  const degree = Math.max(
    1,
    ...[...model.matchAll(/x\s*(?:\^|\*\*)\s*(\d+)/g)].map((found) => Number(found[1])),
  );
  const rows = x.map((value) =>
    Array.isArray(value) ? value : Array.from({ length: degree }, (_, k) => value ** (k + 1)),
  );
  const fit = leastSquares(rows, y, { constant: /\bB0\b/i.test(model) });
  return {
    estimates: fit.estimates,
    sd_of_estimates: fit.standardErrors,
    residual_sd: fit.residualSd,
    r_squared: fit.rSquared ?? null,
    df_regression: fit.regressionDegrees,
    ss_regression: fit.regressionSquares,
    F: fit.f ?? null,
    df_residual: fit.residualDegrees,
    ss_residual: fit.residualSquares,
  };
}
