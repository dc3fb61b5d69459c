import { c4 } from '@/lib/maths/control/c4';
import { capabilityIndices } from '@/lib/maths/control/capability-indices';
import { cpInterval } from '@/lib/maths/control/cp-interval';
import { cpkInterval } from '@/lib/maths/control/cpk-interval';
import { percentileCapability } from '@/lib/maths/control/percentile-capability';
import { rangeMoments } from '@/lib/maths/control/range-moments';
import { normalQuantile } from '@/lib/maths/distributions/normal-quantile';
import { weibullQuantile } from '@/lib/maths/distributions/weibull-quantile';
import { isGiven } from './topic';

export const topic = 'Process capability';

type Inputs = {
  lsl?: number;
  usl?: number;
  mean?: number;
  sigma?: number;
  s?: number;
  r_bar?: number;
  s_bar?: number;
  n?: number;
  target?: number;
  confidence?: number;
  Cp?: number;
  Cpk?: number;
  distribution?: string;
  parameters?: Record<string, number>;
  percentiles?: [number, number];
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const given = inputs as Inputs;
  if (given.distribution !== undefined) return byPercentiles(given);
  if (given.Cp !== undefined) return spreadInterval(given.Cp, given);
  if (given.Cpk !== undefined) return middleInterval(given.Cpk, given);
  if (given.mean === undefined) {
    const cp = (given.usl! - given.lsl!) / (6 * sigmaOf(given));
    return { Cp: cp, ...spreadInterval(cp, given) };
  }
  return byMoments({ ...given, mean: given.mean });
}

/** From a chart's mean range or mean s of subgroups of n, or as it is given. */
function sigmaOf({ sigma, s, r_bar, s_bar, n }: Inputs): number {
  if (r_bar !== undefined) return r_bar / rangeMoments(n!).d2;
  if (s_bar !== undefined) return s_bar / c4(n!);
  return sigma ?? s!;
}

function spreadInterval(cp: number, { n, confidence }: Inputs): Record<string, unknown> {
  if (confidence === undefined) return {};
  const { low, high, lowOneSided } = cpInterval(cp, n!, confidence);
  return { ci: [low, high], one_sided_lower: lowOneSided };
}

function middleInterval(cpk: number, { n, confidence }: Inputs): Record<string, unknown> {
  if (confidence === undefined) return {};
  const { low, high } = cpkInterval(cpk, n!, confidence);
  return { ci: [low, high] };
}

function limitsOf({ lsl, usl }: Inputs): { lower?: number; upper?: number } {
  return { ...(isGiven(lsl) && { lower: lsl }), ...(isGiven(usl) && { upper: usl }) };
}

function byMoments(inputs: Inputs & { mean: number }): Record<string, unknown> {
  const { mean, target } = inputs;
  const sigma = sigmaOf(inputs);
  const found = capabilityIndices({
    mean,
    sigma,
    ...limitsOf(inputs),
    ...(isGiven(target) && { target }),
  });
  const isOfSubgroups = inputs.r_bar !== undefined || inputs.s_bar !== undefined;
  return {
    sigma_hat: sigma,
    Cp: found.cp ?? null,
    Cpu: found.cpkUpper ?? null,
    Cpl: found.cpkLower ?? null,
    Cpk: found.cpk,
    k: found.offCentre ?? null,
    Cpm: found.cpm ?? null,
    p_above: found.fractionAbove,
    p_below: found.fractionBelow,
    fraction_nonconforming: found.fractionAbove + found.fractionBelow,
    natural_limits: [mean - 3 * sigma, mean + 3 * sigma],
    ...(isOfSubgroups ? {} : intervalByMethod(found, inputs)),
  };
}

/** The interval is that of Cpk unless the method is said to be the one on Cp. */
function intervalByMethod(
  { cp, cpk }: { cp?: number; cpk: number },
  inputs: Inputs & { method?: string },
): Record<string, unknown> {
  const isOnCp = inputs.method?.startsWith('chi-square') === true;
  return isOnCp ? spreadInterval(cp!, inputs) : middleInterval(cpk, inputs);
}

function byPercentiles(inputs: Inputs): Record<string, unknown> {
  const [below, above] = inputs.percentiles ?? [0.00135, 0.99865];
  const at = quantileOf(inputs);
  const found = percentileCapability({
    low: at(below),
    median: at(0.5),
    high: at(above),
    ...limitsOf(inputs),
  });
  return {
    x_lo: at(below),
    median: at(0.5),
    x_hi: at(above),
    Pp: found.pp ?? null,
    PpkU: found.ppkUpper ?? null,
    PpkL: found.ppkLower ?? null,
    Ppk: found.ppk,
    Cnpk: found.ppk,
  };
}

/** Normal and Weibull; the others by their definitions. */
function quantileOf({ distribution, parameters = {} }: Inputs): (p: number) => number {
  const { mean, sigma, shape, scale, location = 0, mu } = parameters;
  if (/^log-?normal/i.test(distribution!)) {
    return (p) => location + Math.exp((mu ?? mean!) + sigma! * normalQuantile(p));
  }
  if (/^exponential/i.test(distribution!)) {
    return (p) => location + weibullQuantile(p, { shape: 1, scale: scale ?? mean! });
  }
  if (/^(rayleigh)/i.test(distribution!)) {
    return (p) =>
      location + weibullQuantile(p, { shape: 2, scale: (scale ?? sigma!) * Math.SQRT2 });
  }
  if (/^(rectangular|uniform)/i.test(distribution!)) {
    const { low, high } = parameters;
    return (p) => low! + p * (high! - low!);
  }
  if (mean !== undefined && sigma !== undefined) return (p) => mean + sigma * normalQuantile(p);
  return (p) => location + weibullQuantile(p, { shape: shape!, scale: scale! });
}
