import { cusumChart } from '@/lib/maths/control/cusum-chart';
import { ewmaChart } from '@/lib/maths/control/ewma-chart';

export const topic = 'EWMA and tabular CUSUM';

type Ewma = {
  x: number[];
  lambda: number;
  ewma0: number;
  sigma: number;
  L: number;
  limits: 'asymptotic' | 'time-varying';
};
type Cusum = { x: number[]; target: number; k_abs: number; h_abs: number };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  return 'lambda' in inputs ? ewma(inputs as Ewma) : cusum(inputs as Cusum);
}

function ewma({ x, lambda, ewma0, sigma, L, limits }: Ewma): Record<string, unknown> {
  const isSettled = limits === 'asymptotic';
  const chart = ewmaChart({
    values: x,
    lambda,
    centre: ewma0,
    sigma,
    multiple: L,
    limits: isSettled ? 'settled' : 'from the start',
  });
  return {
    ewma: chart.averages,
    ewma_2dp: chart.averages,
    ucl: isSettled ? chart.upper[0] : chart.upper,
    lcl: isSettled ? chart.lower[0] : chart.lower,
    out_of_control: chart.outside.map((index) => index + 1),
  };
}

function cusum({ x, target, k_abs, h_abs }: Cusum): Record<string, unknown> {
  const chart = cusumChart({ values: x, target, slack: k_abs, decision: h_abs });
  return {
    s_hi: chart.high,
    s_lo: chart.low,
    s_hi_2dp: chart.high,
    s_lo_2dp: chart.low,
    n_hi: chart.highCount,
    n_lo: chart.lowCount,
    first_signal_index_1based: chart.signal === undefined ? null : chart.signal.index + 1,
    side: chart.signal?.side ?? null,
  };
}
