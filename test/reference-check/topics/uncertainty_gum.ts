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

export const topic = 'GUM law of propagation, Welch-Satterthwaite, t factors';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.relative_uncertainty_of_u !== undefined) {
    return { nu: (inputs.relative_uncertainty_of_u as number[]).map(degreesFromDoubt) };
  }
  if (inputs.nu !== undefined) return tFactors(inputs.nu as number[], inputs.p as number[]);
  if (inputs.relative_u_percent !== undefined) return welch(inputs);
  return gaugeBlock(inputs as Record<string, number>);
}

/** Coverages written 68.27, 95.45 and 99.73 % stand for one, two and three standard deviations. */
function tFactors(nu: number[], p: number[]) {
  const sigmas = new Map([0.6827, 0.9545, 0.9973].map((written, i) => [written, i + 1]));
  const upper = p.map((written) => {
    const k = sigmas.get(written);
    return k === undefined ? (1 + written) / 2 : normalCdf(k);
  });
  return { t: nu.map((degrees) => upper.map((chance) => studentTQuantile(chance, degrees))) };
}

function welch(inputs: Record<string, unknown>) {
  const {
    relative_u_percent: parts,
    n,
    p,
  } = inputs as {
    relative_u_percent: number[];
    n: number[];
    p: number;
  };
  const u = combinedUncertainty(parts);
  const degrees = effectiveDegrees(
    parts.map((contribution, i) => ({ contribution, degrees: n[i]! - 1 })),
  );
  const { factor, expanded } = expandedUncertainty(u, Math.floor(degrees), p);
  return {
    uc_percent: u,
    nu_eff: degrees,
    k_truncated: factor,
    U95_percent: expanded,
    t95_19: expandedUncertainty(u, Math.round(degrees), p).factor,
  };
}

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
    t99_16: factor,
    U99_nm: expanded,
    uc_with_second_order_nm: combinedUncertainty([u, ...second]),
    uc_relative: reported / value,
  };
}

function gaugeLength([lS, d, dalpha, theta, alphaS, dtheta]: readonly number[]): number {
  return lS! + d! - lS! * (dalpha! * theta! + alphaS! * dtheta!);
}
