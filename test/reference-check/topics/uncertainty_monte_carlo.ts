import { parseFormula } from '@/lib/maths/derived/formula';
import { coverageInterval } from '@/lib/maths/metrology/coverage-interval';
import type { Distribution } from '@/lib/maths/metrology/distribution';
import { distributionMoments } from '@/lib/maths/metrology/distribution-moments';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';
import { propagateUncertainty } from '@/lib/maths/metrology/propagate-uncertainty';
import type { Model } from '@/lib/maths/metrology/sensitivities';

export const topic = 'Propagation of distributions (Monte Carlo), shortest coverage intervals';

const run = { draws: 1_000_000, seed: 20_080_101 };
const percents = [90, 95, 99];

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (Array.isArray(inputs.distributions)) {
    return sumOf((inputs.distributions as string[]).map(distributionFrom));
  }
  return byModel(inputs as Record<string, string> & { model: string });
}

function sumOf(inputs: Distribution[]): Record<string, unknown> {
  const { drawn, gum, intervals } = propagated(sum, inputs);
  return {
    y: gum.value,
    u: gum.u,
    ...named('gum_framework', '', intervals.framework),
    monte_carlo_1e6: {
      u: drawn.u,
      ...named('coverage', '_symmetric', intervals.symmetric),
      ...named('coverage', '', intervals.symmetric),
      ...named('shortest', '', intervals.shortest),
    },
  };
}

/** A model written out, such as the end gauge of JCGM 101 9.5: its names are those of the inputs. */
function byModel(given: Record<string, string> & { model: string }): Record<string, unknown> {
  const { evaluate, inputs } = modelFrom(given.model, given);
  const { drawn, gum, intervals } = propagated(evaluate, inputs);
  const ofDraws = { y: drawn.value, u: drawn.u };
  const ofFramework = { y: gum.value, u: gum.u };
  return {
    mcm: { ...ofDraws, ...named('shortest', '', intervals.shortest) },
    gum: { ...ofFramework, ...named('interval', '', intervals.framework) },
    MCM: { ...ofDraws, ...named('ci', '', intervals.shortest) },
    GUF: { ...ofFramework, ...named('ci', '', intervals.framework) },
  };
}

type ByPercent = Record<number, [number, number]>;

/** One interval a percentage, the percentage in its name. */
function named(before: string, after: string, intervals: ByPercent): Record<string, unknown> {
  return Object.fromEntries(percents.map((p) => [`${before}${p}${after}`, intervals[p]]));
}

/** By draws, and by the law of propagation with the degrees of freedom cut to a whole number. */
function propagated(model: Model, inputs: readonly Distribution[]) {
  const drawn = monteCarlo(model, inputs, { ...run, coverage: 0.95 });
  const gum = propagateUncertainty(model, inputs.map(distributionMoments));
  const degrees = Math.floor(gum.degrees!);
  const each = (of: (part: number) => [number, number]): ByPercent =>
    Object.fromEntries(percents.map((p) => [p, of(p / 100)]));
  const drawnEnds = (kind: 'symmetric' | 'shortest') =>
    each((part) => {
      const { low, high } = coverageInterval(drawn.sorted, part, kind);
      return [low, high];
    });
  return {
    drawn,
    gum,
    intervals: {
      symmetric: drawnEnds('symmetric'),
      shortest: drawnEnds('shortest'),
      framework: each((part) => {
        const { expanded } = expandedUncertainty(gum.u, degrees, part);
        return [gum.value - expanded, gum.value + expanded];
      }),
    },
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** How many of the small unit of the inputs' names, `Ls_nm`, one of a unit in the model is. */
const smallUnits: Record<string, Record<string, number>> = {
  nm: { mm: 1e6, um: 1e3, nm: 1 },
  um: { mm: 1e3, um: 1 },
  mm: { m: 1e3, mm: 1 },
  mg: { kg: 1e6, g: 1e3, mg: 1 },
};

/**
 * The model as a formula and a distribution for each of its names, found under the name itself or
 * with a unit after it; an amount with a unit, such as 50 mm, is put into the unit of the inputs.
 */
function modelFrom(text: string, given: Record<string, unknown>) {
  const keys = Object.keys(given).filter((key) => key !== 'model');
  const suffix = keys.map((key) => key.split('_').at(-1)!).find((word) => word in smallUnits);
  const plain = text.replace(/(\d+(?:\.\d+)?)\s*(kg|mg|g|nm|um|mm|m)\b/g, (_, amount, unit) => {
    const many = suffix === undefined ? undefined : smallUnits[suffix]![unit as string];
    if (many === undefined) throw new Error(`no ${unit} beside inputs in ${suffix}`);
    return String(Number(amount) * many);
  });
  const { names, evaluate } = parseFormula(plain);
  const inputs = names.map((name) => {
    const key = keys.find((one) => one === name || one === `${name}_${suffix}`);
    if (key === undefined) throw new Error(`no input for ${name} of the model`);
    return distributionFrom(given[key] as string);
  });
  return { evaluate, inputs };
}

/** `N(0, 1)`, `R(-sqrt3, sqrt3)`, `t18(0, 25)`, `arcsine(-1, 1)`, `CTrap(-1, 1, 0.1)`. */
function distributionFrom(text: string): Distribution {
  const [, name = '', degrees, listed = ''] = /^\s*([A-Za-z]+)(\d*)\((.*)\)\s*$/.exec(text) ?? [];
  const [a, b, c] = listed.split(',').map(numberFrom) as [number, number, number?];
  switch (name.toLowerCase()) {
    case 'n':
      return { shape: 'normal', mean: a, sd: b };
    case 't':
      return degrees === ''
        ? { shape: 'triangular', low: a, high: b }
        : { shape: 't', degrees: Number(degrees), centre: a, scale: b };
    case 'arcsine':
    case 'u':
      return { shape: 'arcsine', low: a, high: b };
    case 'ctrap':
      return { shape: 'curvilinear-trapezoid', low: a, high: b, doubt: c! };
    case 'r':
      return { shape: 'rectangular', low: a, high: b };
    case 'tri':
    case 'triangular':
      return { shape: 'triangular', low: a, high: b };
    default:
      throw new Error(`no distribution is written ${text}`);
  }
}

/** `-10 sqrt3`, `sqrt(3)/2`, `9.5e-6`. */
function numberFrom(text: string): number {
  const plain = Number(text);
  if (!Number.isNaN(plain)) return plain;
  return parseFormula(text.replace(/sqrt\s*(\d+(?:\.\d+)?)/g, 'sqrt($1)')).evaluate([]);
}
