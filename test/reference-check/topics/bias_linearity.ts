import { calibrationLine } from '@/lib/maths/gauge/calibration-line';
import { gaugeBias } from '@/lib/maths/gauge/gauge-bias';
import { gaugeLinearity } from '@/lib/maths/gauge/gauge-linearity';
import { nestedAnova } from '@/lib/maths/gauge/nested-anova';

export const topic = 'Bias, linearity, calibration line, nested ANOVA';

type Linearity = { reference: number[]; readings: number[][]; confidence?: number };
type Bias = { reference: number; readings: number[]; confidence?: number };
/** Means and standard deviations of the readings of each day, as in JCGM 100 H.5. */
type Nested = { means: number[]; s?: number[]; sds?: number[]; n?: number; K?: number };
type Calibration = { t: number[]; b: number[]; t0: number; predict_at?: number | number[] };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if ('means' in inputs) return nested(inputs as Nested);
  if (!('reference' in inputs)) return calibration(inputs as Calibration);
  return Array.isArray(inputs.reference) ? linearity(inputs as Linearity) : bias(inputs as Bias);
}

function bias({ reference, readings, confidence = 0.95 }: Bias): Record<string, unknown> {
  const found = gaugeBias(readings, reference, confidence);
  const interval = [found.interval.low, found.interval.high];
  return {
    n: found.count,
    mean: reference + found.bias,
    bias: found.bias,
    s: found.sd,
    sd: found.sd,
    se: found.se,
    t: found.t ?? null,
    p: found.p ?? null,
    df: found.degreesOfFreedom,
    ...named('t_critical', confidence, (found.interval.high - found.bias) / found.se),
    ...named('ci', confidence, interval),
    interval,
  };
}

/** `t_critical_975` and `ci95`: the chance stands in the name. */
function named(name: string, confidence: number, value: unknown): Record<string, unknown> {
  const upper = String((1 + confidence) / 2).slice(2);
  return {
    [`${name}_${upper}`]: value,
    [`${name}${String(Math.round(1000 * confidence) / 10)}`]: value,
  };
}

function linearity({ reference, readings, confidence = 0.95 }: Linearity): Record<string, unknown> {
  const found = gaugeLinearity({ references: reference, readings, confidence });
  return {
    slope: found.line.slope,
    intercept: found.line.intercept,
    r_squared: found.rSquared ?? null,
    r_squared_percent: found.rSquared === undefined ? null : 100 * found.rSquared,
    residual_sd: found.line.residualSd,
    t_slope: found.tSlope ?? null,
    t_intercept: found.tIntercept ?? null,
    p_slope: found.pSlope ?? null,
    p_intercept: found.pIntercept ?? null,
    df: found.line.degreesOfFreedom,
    mean_bias: found.meanBias,
    ...named('t_critical', confidence, found.tCritical),
  };
}

function nested({ means, s, sds, n, K }: Nested): Record<string, unknown> {
  const found = nestedAnova({ means, sds: (sds ?? s)!, readings: (K ?? n)! });
  return {
    mean: found.mean,
    grand_mean: found.mean,
    s_a: Math.sqrt(found.betweenMeanSquare),
    s_b: Math.sqrt(found.withinMeanSquare),
    s2_a: found.betweenMeanSquare,
    s2_b: found.withinMeanSquare,
    df_a: found.betweenDegrees,
    df_b: found.withinDegrees,
    F: found.f ?? null,
    p: found.p ?? null,
    s_B: Math.sqrt(found.betweenVariance),
    s_W: Math.sqrt(found.withinMeanSquare),
    u_mean: found.uMean,
    u_mean_pooled: found.uMeanPooled,
  };
}

function calibration({ t, b, t0, predict_at = [] }: Calibration): Record<string, unknown> {
  const found = calibrationLine(t, b, t0);
  const predicted = [predict_at].flat().flatMap((at) => {
    const { correction, u } = found.correctionAt(at);
    return [
      [`b_at_${at}`, correction],
      [`u_b_at_${at}`, u],
    ];
  });
  return {
    y1: found.atReference,
    y2: found.slope,
    s_y1: found.uAtReference,
    s_y2: found.uSlope,
    r: found.correlation,
    s: found.scatter,
    ...Object.fromEntries(predicted),
    t_of_minimum_u: found.bestKnownAt,
  };
}
