import { derivedDimension, type KnownDimension } from '@/lib/maths/derived/derived-dimension';
import { normalCdf } from '@/lib/maths/distributions/normal-cdf';
import { studentTQuantile } from '@/lib/maths/distributions/student-t-quantile';
import { effectiveDegrees } from '@/lib/maths/metrology/effective-degrees';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { combinedUncertainty } from '@/lib/maths/metrology/combined-uncertainty';
import { propagateUncertainty } from '@/lib/maths/metrology/propagate-uncertainty';
import { secondOrderTerms } from '@/lib/maths/metrology/second-order-terms';
import {
  degreesFromDoubt,
  fromArcsine,
  fromCertificate,
  fromConfidence,
  fromRectangular,
} from '@/lib/maths/metrology/type-b';
import { isGiven } from './topic';

export const topic = 'GUM law of propagation, Welch-Satterthwaite, t factors';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.relative_uncertainty_of_u !== undefined) {
    return {
      nu: [inputs.relative_uncertainty_of_u].flat().map((r) => degreesFromDoubt(Number(r))),
    };
  }
  if (inputs.values !== undefined) return byFormula(inputs);
  if (inputs.relative_u_percent !== undefined || inputs.u !== undefined) return welch(inputs);
  if (inputs.nu !== undefined) return tFactors(inputs);
  const model = models[String(inputs.model)];
  if (model === undefined) throw new Error(`no model is called ${String(inputs.model)}`);
  return model(inputs as Record<string, number>);
}

/** A model written out, with a value and an uncertainty for each of its names. */
function byFormula(inputs: Record<string, unknown>): Record<string, unknown> {
  const values = inputs.values as Record<string, number>;
  const u = inputs.u as Record<string, number>;
  const degrees = (inputs.degrees_of_freedom ?? inputs.nu ?? {}) as Record<string, number>;
  const found = derivedDimension(
    (inputs.model ?? inputs.formula) as string,
    Object.fromEntries(
      Object.entries(values).map(([name, value]): [string, KnownDimension] => [
        name,
        { value, u: u[name] ?? 0, ...(isGiven(degrees[name]) && { degrees: degrees[name] }) },
      ]),
    ),
    (inputs.correlations ?? []) as [string, string, number][],
  );
  const expanded =
    found.expanded === undefined || inputs.p === undefined
      ? undefined
      : expandedUncertainty(found.u, found.expanded.degrees, inputs.p as number);
  return {
    y: found.value,
    value: found.value,
    u: found.u,
    uc: found.u,
    sensitivities: found.sensitivities,
    contributions: found.contributions,
    contributions_u: found.contributions,
    nu_eff: found.expanded?.degrees,
    k: expanded?.factor,
    U: expanded?.expanded,
    U95_with_t: found.expanded?.U95,
  };
}

/** Coverages written 68.27, 95.45 and 99.73 % stand for one, two and three standard deviations. */
function tFactors(inputs: Record<string, unknown>) {
  const [nu, p] = [inputs.nu, inputs.p].map((one) => [one].flat() as number[]) as [
    number[],
    number[],
  ];
  const sigmas = new Map([0.6827, 0.9545, 0.9973].map((written, i) => [written, i + 1]));
  const upper = p.map((written) => {
    const k = sigmas.get(written);
    return k === undefined ? (1 + written) / 2 : normalCdf(k);
  });
  return { t: nu.map((degrees) => upper.map((chance) => studentTQuantile(chance, degrees))) };
}

function welch(inputs: Record<string, unknown>) {
  const parts = (inputs.relative_u_percent ?? inputs.u) as number[];
  const counts = inputs.n as number[] | undefined;
  const p = (inputs.p ?? 0.95) as number;
  const nu = counts?.map((n) => n - 1) ?? (inputs.nu as number[]);
  const u = combinedUncertainty(parts);
  const degrees = effectiveDegrees(
    parts.map((contribution, i) => ({ contribution, degrees: nu[i] ?? Infinity })),
  );
  const { factor, expanded } = expandedUncertainty(u, Math.floor(degrees), p);
  const nearest = Math.round(degrees);
  return {
    uc_percent: u,
    uc: u,
    nu_eff: degrees,
    k_truncated: factor,
    [`U${percent(p)}_percent`]: expanded,
    [`U${percent(p)}`]: expanded,
    [`t${percent(p)}_${nearest}`]: expandedUncertainty(u, nearest, p).factor,
  };
}

const percent = (p: number) => String(Math.round(10_000 * p) / 100);

/** JCGM 100 H.1: an end gauge compared with a standard, in nanometres. */
function gaugeBlock(given: Record<string, number>) {
  const of = (name: string) => given[name]!;
  const uDbar = of('s_pooled_nm') / Math.sqrt(of('n_d'));
  const uD1 = fromConfidence(of('d1_U95_nm'), 0.95, of('nu_d1'));
  const uD2 = fromCertificate(of('d2_3sigma_nm'), 3);
  const uD = combinedUncertainty([uDbar, uD1, uD2]);
  const nuD = effectiveDegrees([
    { contribution: uDbar, degrees: of('nu_dbar') },
    { contribution: uD1, degrees: of('nu_d1') },
    { contribution: uD2, degrees: of('nu_d2') },
  ]);
  const uTheta = combinedUncertainty([
    of('u_theta_mean'),
    fromArcsine(of('theta_cyclic_amplitude_arcsine')),
  ]);
  const inputs = [
    {
      value: of('lS_mm') * 1e6,
      u: fromCertificate(of('U_lS_nm'), of('k_lS')),
      degrees: of('nu_lS'),
    },
    { value: of('d_nm'), u: uD, degrees: nuD },
    { value: of('dalpha'), u: fromRectangular(of('dalpha_half_width')), degrees: of('nu_dalpha') },
    { value: of('theta'), u: uTheta },
    { value: of('alphaS'), u: fromRectangular(of('alphaS_half_width')) },
    { value: of('dtheta'), u: fromRectangular(of('dtheta_half_width')), degrees: of('nu_dtheta') },
  ];
  const { value, u, contributions, degrees } = propagateUncertainty(gaugeLength, inputs);
  const terms = secondOrderTerms(
    gaugeLength,
    inputs.map((one) => one.value),
    inputs.map((one) => one.u),
  );
  const pair = (first: number, second: number) =>
    Math.sqrt(terms.find((term) => term.first === first && term.second === second)!.variance);
  const second = [pair(2, 3), pair(4, 5)];
  const truncated = Math.floor(degrees!);
  // The printed U and the printed part of l are formed from u as reported, in whole nanometres.
  const reported = Math.round(u);
  const { factor, expanded } = expandedUncertainty(reported, truncated, of('p'));
  return {
    l_mm: value / 1e6,
    u_dbar_nm: uDbar,
    u_d1_nm: uD1,
    u_d2_nm: uD2,
    u_theta_degC: uTheta,
    contribution_dalpha_nm: contributions[2],
    contribution_dtheta_nm: contributions[5],
    second_order_nm: second,
    u_d_nm: uD,
    nu_d: nuD,
    contributions_nm: {
      lS: contributions[0],
      d: contributions[1],
      dalpha: contributions[2],
      dtheta: contributions[5],
    },
    uc2_nm2: u * u,
    uc_nm: u,
    nu_eff: degrees,
    nu_eff_truncated: truncated,
    [`t${percent(of('p'))}_${truncated}`]: factor,
    [`U${percent(of('p'))}_nm`]: expanded,
    uc_with_second_order_nm: combinedUncertainty([u, ...second]),
    uc_relative: reported / value,
  };
}

function gaugeLength([lS, d, dalpha, theta, alphaS, dtheta]: readonly number[]): number {
  return lS! + d! - lS! * (dalpha! * theta! + alphaS! * dtheta!);
}

/** Cases built round a model of their own, by the model's name. */
const models: Record<string, (given: Record<string, number>) => Record<string, unknown>> = {
  'l = lS + d - lS*(dalpha*theta + alphaS*dtheta)': gaugeBlock,
};
