import type { Distribution } from '@/lib/maths/metrology/distribution';
import { distributionMoments } from '@/lib/maths/metrology/distribution-moments';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';
import { propagateUncertainty } from '@/lib/maths/metrology/propagate-uncertainty';

export const topic = 'Propagation of distributions (Monte Carlo), shortest coverage intervals';

const run = { draws: 1_000_000, seed: 20_080_101 };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (Array.isArray(inputs.distributions)) {
    return sumOf((inputs.distributions as string[]).map(distributionFrom));
  }
  return gaugeBlock(inputs as Record<string, string>);
}

function sumOf(inputs: Distribution[]): Record<string, unknown> {
  const drawn = monteCarlo(sum, inputs, { ...run, coverage: 0.95 });
  const interval = [drawn.symmetric.low, drawn.symmetric.high];
  const { value, u } = propagateUncertainty(sum, inputs.map(distributionMoments));
  const { expanded } = expandedUncertainty(u, Infinity, 0.95);
  return {
    y: value,
    u,
    gum_framework95: [value - expanded, value + expanded],
    monte_carlo_1e6: {
      u: drawn.u,
      coverage95_symmetric: interval,
      coverage95: interval,
    },
  };
}

/** JCGM 101 9.5: the end gauge again, in nanometres above 50 mm. */
function gaugeBlock(given: Record<string, string>): Record<string, unknown> {
  const names = [
    'Ls_nm',
    'D_nm',
    'd1_nm',
    'd2_nm',
    'alpha_s',
    'theta0',
    'Delta',
    'dalpha',
    'dtheta',
  ];
  const inputs = names.map((name) => distributionFrom(given[name]!));
  const drawn = monteCarlo(gaugeLength, inputs, { ...run, coverage: 0.99 });
  const shortest = [drawn.shortest.low, drawn.shortest.high];
  const { value, u, degrees } = propagateUncertainty(gaugeLength, inputs.map(distributionMoments));
  const { expanded } = expandedUncertainty(u, Math.floor(degrees!), 0.99);
  const interval = [value - expanded, value + expanded];
  return {
    mcm: { y: drawn.value, u: drawn.u, shortest99: shortest },
    gum: { y: value, u, interval99: interval },
    MCM: { y: drawn.value, u: drawn.u, ci99: shortest },
    GUF: { y: value, u, ci99: interval },
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function gaugeLength(values: readonly number[]): number {
  const [Ls, D, d1, d2, alphaS, theta0, Delta, dalpha, dtheta] = values as number[];
  const difference = dalpha! * (theta0! + Delta!) + alphaS! * dtheta!;
  return Ls! + D! + d1! + d2! - Ls! * difference - 50e6;
}

/** `N(0, 1)`, `R(-sqrt3, sqrt3)`, `t18(0, 25)`, `arcsine(-1, 1)`, `CTrap(-1, 1, 0.1)`. */
function distributionFrom(text: string): Distribution {
  const found = /^([A-Za-z]+)(\d*)\((.*)\)$/.exec(text);
  const [a, b, c] = (found?.[3] ?? '').split(',').map(numberFrom) as [number, number, number?];
  const name = found?.[1];
  if (name === 'N') return { shape: 'normal', mean: a, sd: b };
  if (name === 't') return { shape: 't', degrees: Number(found?.[2]), centre: a, scale: b };
  if (name === 'arcsine') return { shape: 'arcsine', low: a, high: b };
  if (name === 'CTrap') return { shape: 'curvilinear-trapezoid', low: a, high: b, doubt: c! };
  if (name === 'R') return { shape: 'rectangular', low: a, high: b };
  if (name === 'T') return { shape: 'triangular', low: a, high: b };
  throw new Error(`no distribution is written ${text}`);
}

function numberFrom(text: string): number {
  const root = /^\s*(-?)sqrt\s*\(?([\d.]+)\)?\s*$/.exec(text);
  return root === null ? Number(text) : Math.sqrt(Number(root[2])) * (root[1] === '-' ? -1 : 1);
}
