import { capabilityIndices } from '@/lib/maths/control/capability-indices';
import { cpInterval } from '@/lib/maths/control/cp-interval';
import { cpkInterval } from '@/lib/maths/control/cpk-interval';
import { percentileCapability } from '@/lib/maths/control/percentile-capability';
import { rangeMoments } from '@/lib/maths/control/range-moments';
import { normalQuantile } from '@/lib/maths/distributions/normal-quantile';
import { weibullQuantile } from '@/lib/maths/distributions/weibull-quantile';

export const topic = 'Process capability';

type Inputs = {
  lsl: number;
  usl: number;
  mean?: number;
  sigma?: number;
  s?: number;
  r_bar?: number;
  n?: number;
  target?: number;
  confidence?: number;
  Cp?: number;
  distribution?: string;
  parameters?: Record<string, number>;
  percentiles?: [number, number];
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const given = inputs as Inputs;
  if (given.distribution !== undefined) return byPercentiles(given);
  if (given.Cp !== undefined) return spreadInterval(given.Cp, given);
  if (given.mean === undefined) {
    const cp = (given.usl - given.lsl) / (6 * given.s!);
    return { Cp: cp, ...spreadInterval(cp, given) };
  }
  return byMoments({ ...given, mean: given.mean });
}

function spreadInterval(cp: number, { n, confidence }: Inputs): Record<string, unknown> {
  const { low, high, lowOneSided } = cpInterval(cp, n!, confidence!);
  return { ci: [low, high], one_sided_lower: lowOneSided };
}

function byMoments(inputs: Inputs & { mean: number }): Record<string, unknown> {
  const { mean, lsl, usl, target, n, r_bar, confidence } = inputs;
  const sigma = r_bar === undefined ? (inputs.sigma ?? inputs.s!) : r_bar / rangeMoments(n!).d2;
  const found = capabilityIndices({
    mean,
    sigma,
    lower: lsl,
    upper: usl,
    ...(target !== undefined && { target }),
  });
  const interval = confidence === undefined ? undefined : cpkInterval(found.cpk, n!, confidence);
  return {
    sigma_hat: sigma,
    Cp: found.cp,
    Cpu: found.cpkUpper,
    Cpl: found.cpkLower,
    Cpk: found.cpk,
    k: found.offCentre,
    Cpm: found.cpm,
    p_above: found.fractionAbove,
    p_below: found.fractionBelow,
    fraction_nonconforming: found.fractionAbove + found.fractionBelow,
    natural_limits: [mean - 3 * sigma, mean + 3 * sigma],
    ...(interval !== undefined && { ci: [interval.low, interval.high] }),
  };
}

function byPercentiles(inputs: Inputs): Record<string, unknown> {
  const [below, above] = inputs.percentiles ?? [0.00135, 0.99865];
  const at = quantileOf(inputs);
  const found = percentileCapability({
    low: at(below),
    median: at(0.5),
    high: at(above),
    lower: inputs.lsl,
    upper: inputs.usl,
  });
  if (inputs.percentiles !== undefined) return { Cnpk: found.ppk };
  return {
    x_lo: at(below),
    median: at(0.5),
    x_hi: at(above),
    Pp: found.pp,
    PpkU: found.ppkUpper,
    PpkL: found.ppkLower,
    Ppk: found.ppk,
  };
}

function quantileOf({ parameters = {} }: Inputs): (p: number) => number {
  const { mean, sigma, shape, scale, location } = parameters;
  if (mean !== undefined && sigma !== undefined) return (p) => mean + sigma * normalQuantile(p);
  return (p) => location! + weibullQuantile(p, { shape: shape!, scale: scale! });
}
