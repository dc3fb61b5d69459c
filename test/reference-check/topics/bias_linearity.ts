import { calibrationLine } from '@/lib/maths/gauge/calibration-line';
import { gaugeLinearity } from '@/lib/maths/gauge/gauge-linearity';

export const topic = 'Bias, linearity, calibration line, nested ANOVA';

type Linearity = { reference: number[]; readings: number[][] };
type Calibration = { t: number[]; b: number[]; t0: number; predict_at: number };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  return 'reference' in inputs
    ? linearity(inputs as Linearity)
    : calibration(inputs as Calibration);
}

function linearity({ reference, readings }: Linearity): Record<string, unknown> {
  const found = gaugeLinearity({ references: reference, readings, confidence: 0.95 });
  return {
    slope: found.line.slope,
    intercept: found.line.intercept,
    r_squared: found.rSquared,
    r_squared_percent: 100 * found.rSquared!,
    residual_sd: found.line.residualSd,
    t_slope: found.tSlope,
    t_intercept: found.tIntercept,
    df: found.line.degreesOfFreedom,
    mean_bias: found.meanBias,
    t_critical_975: found.tCritical,
  };
}

function calibration({ t, b, t0, predict_at }: Calibration): Record<string, unknown> {
  const found = calibrationLine(t, b, t0);
  const { correction, u } = found.correctionAt(predict_at);
  return {
    y1: found.atReference,
    y2: found.slope,
    s_y1: found.uAtReference,
    s_y2: found.uSlope,
    r: found.correlation,
    s: found.scatter,
    [`b_at_${predict_at}`]: correction,
    [`u_b_at_${predict_at}`]: u,
    t_of_minimum_u: found.bestKnownAt,
  };
}
