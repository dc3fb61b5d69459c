import { cusumChart } from '@/lib/maths/control/cusum-chart';
import { ewmaChart } from '@/lib/maths/control/ewma-chart';

export const topic = 'EWMA and tabular CUSUM';

type Ewma = {
  x: number[];
  lambda: number;
  ewma0?: number;
  target?: number;
  sigma: number;
  /** Size of the subgroups whose means x are. */
  n?: number;
  L: number;
  limits?: 'asymptotic' | 'time-varying';
};
type Cusum = {
  x: number[];
  target: number;
  k_abs?: number;
  h_abs?: number;
  /** In sigmas, where they are not given as amounts. */
  k?: number;
  h?: number;
  sigma?: number;
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  return 'lambda' in inputs
    ? ewma(inputs as Ewma)
    : cusum(inputs as Cusum & Record<string, unknown>);
}

function ewma({ x, lambda, ewma0, target, sigma, n = 1, L, limits }: Ewma) {
  const isSettled = limits === 'asymptotic';
  const chart = ewmaChart({
    values: x,
    lambda,
    centre: (ewma0 ?? target)!,
    sigma: sigma / Math.sqrt(n),
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

function cusum(inputs: Cusum & Record<string, unknown>): Record<string, unknown> {
  const { x, target, sigma = 1 } = inputs;
  const chart = cusumChart({
    values: x,
    target,
    slack: inputs.k_abs ?? inputs.k! * sigma,
    decision: inputs.h_abs ?? inputs.h! * sigma,
    headStart: startsAhead(inputs),
  });
  const { signal } = chart;
  return {
    s_hi: chart.high,
    s_lo: chart.low,
    s_hi_2dp: chart.high,
    s_lo_2dp: chart.low,
    n_hi: chart.highCount,
    n_lo: chart.lowCount,
    first_signal_index_1based: signal === undefined ? null : signal.index + 1,
    side: signal?.side ?? null,
    change_began_index_1based: signal === undefined ? null : signal.beganAt + 1,
    shift_estimate: signal?.meanNow ?? null,
    mean_estimate: signal?.meanNow ?? null,
  };
}

/** A head start of half the decision interval, by any of its names, given as a yes or as an amount. */
function startsAhead(inputs: Record<string, unknown>): boolean {
  const names = ['head_start', 'headstart', 'fast_start', 'fir', 'fast_initial_response', 'start'];
  const given = names.map((name) => inputs[name]).find((value) => value !== undefined);
  return given !== undefined && given !== false && given !== 0 && given !== null;
}
