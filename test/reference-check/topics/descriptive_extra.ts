import { median } from '@/lib/maths/statistics/median';
import { mean } from '@/lib/maths/statistics/mean';
import { meanInterval } from '@/lib/maths/statistics/mean-interval';
import { medianAbsoluteDeviation } from '@/lib/maths/statistics/median-absolute-deviation';
import { quantile, type QuantileRule } from '@/lib/maths/statistics/quantile';
import { shape } from '@/lib/maths/statistics/shape';
import { spreadInterval } from '@/lib/maths/statistics/spread-interval';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import { standardError } from '@/lib/maths/statistics/standard-error';

export const topic = 'Median, quantile types, shape, confidence intervals';

const rules: Record<string, QuantileRule> = {
  '5': 'midpoint',
  '6': 'weibull',
  '7': 'mode',
  '8': 'median-unbiased',
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const x = inputs.x as number[];
  const chances = (inputs.p as number[] | undefined) ?? [0.05, 0.25, 0.5, 0.75, 0.95];
  const name = `quantiles_p${chances.map((p) => String(p).slice(2).padEnd(2, '0')).join('_')}_by_type`;
  return {
    n: x.length,
    min: Math.min(...x),
    max: Math.max(...x),
    mean: mean(x),
    median: median(x),
    mad_raw: medianAbsoluteDeviation(x),
    [name]: Object.fromEntries(
      Object.entries(rules).map(([type, rule]) => [type, chances.map((p) => quantile(x, p, rule))]),
    ),
    ...spreadOf(x, (inputs.confidence as number | undefined) ?? 0.95),
  };
}

/** What one value, or values all alike, do not tell is null. */
function spreadOf(x: number[], confidence: number): Record<string, unknown> {
  const percent = String(Math.round(1000 * confidence) / 10);
  if (x.length < 2) return { sd: null, se_mean: null, ...formOf(x) };
  const sd = standardDeviation(x);
  const ofMean = meanInterval({ mean: mean(x), sd, n: x.length }, confidence);
  const ofSd = spreadInterval(sd, x.length - 1, confidence);
  return {
    sd,
    se_mean: standardError(x),
    [`ci${percent}_mean`]: [ofMean.low, ofMean.high],
    [`ci${percent}_sd`]: [ofSd.low, ofSd.high],
    ...formOf(x),
  };
}

function formOf(x: number[]): Record<string, unknown> {
  const isAlike = x.every((value) => value === x[0]);
  const form = isAlike ? undefined : shape(x);
  return {
    skew_g1: form?.g1 ?? null,
    skew_G1: form?.G1 ?? null,
    excess_kurtosis_g2: form?.g2 ?? null,
    excess_kurtosis_G2: form?.G2 ?? null,
  };
}
