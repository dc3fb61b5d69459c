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

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const x = inputs.x as number[];
  const sd = standardDeviation(x);
  const form = shape(x);
  const ofMean = meanInterval({ mean: mean(x), sd, n: x.length }, 0.95);
  const ofSd = spreadInterval(sd, x.length - 1, 0.95);
  const at = (rule: QuantileRule) => [0.05, 0.25, 0.5, 0.75, 0.95].map((p) => quantile(x, p, rule));
  return {
    n: x.length,
    min: Math.min(...x),
    max: Math.max(...x),
    median: median(x),
    mad_raw: medianAbsoluteDeviation(x),
    se_mean: standardError(x),
    skew_g1: form.g1,
    skew_G1: form.G1,
    excess_kurtosis_g2: form.g2,
    excess_kurtosis_G2: form.G2,
    quantiles_p05_25_50_75_95_by_type: {
      '5': at('midpoint'),
      '6': at('weibull'),
      '7': at('mode'),
      '8': at('median-unbiased'),
    },
    ci95_mean: [ofMean.low, ofMean.high],
    ci95_sd: [ofSd.low, ofSd.high],
  };
}
