import { closingDistribution, type UncertainLink } from '@/lib/maths/chain/closing-distribution';
import { formulaChain, type FormulaLink } from '@/lib/maths/chain/formula-chain';
import { lastPieceFromMeasured } from '@/lib/maths/chain/last-piece-from-measured';
import { lastPieceWorstCase } from '@/lib/maths/chain/last-piece-worst-case';
import { linearChain, type ClosingRange } from '@/lib/maths/chain/linear-chain';
import type { Distribution } from '@/lib/maths/metrology/distribution';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';
import { isGiven } from './topic';

export const topic =
  'Dimension chains: worst case, root-sum-square, distributions, last piece, sensitivities';

type Row = Record<string, number>;
type Answers = Record<string, unknown>;

export function answer(inputs: Record<string, unknown>): Answers {
  switch (inputs.kind) {
    case 'linear_chain':
      return linear(inputs);
    case 'last_piece_worst_case':
      return lastWorst(inputs);
    case 'normal_chain':
      return normal(inputs);
    case 'distribution_chain':
      return distribution(inputs);
    case 'last_piece_from_measured':
      return lastMeasured(inputs);
    case 'nonlinear_chain':
      return nonlinear(inputs);
    default:
      throw new Error(`no answer for kind ${String(inputs.kind)}`);
  }
}

const ends = ({ least, most }: ClosingRange) => [least, most];

function linksOf(inputs: Record<string, unknown>) {
  return (inputs.links as Row[]).map((row) => ({
    coefficient: row.coef!,
    nominal: row.nominal!,
    upper: row.upper!,
    lower: row.lower!,
  }));
}

function linear(inputs: Record<string, unknown>): Answers {
  const chain = linearChain(linksOf(inputs));
  const wanted = inputs.wanted as [number, number] | undefined;
  const canFail = (range: ClosingRange) => range.least < wanted![0] || range.most > wanted![1];
  const verdicts = !isGiven(wanted)
    ? {}
    : { can_fail_worst_case: canFail(chain.worst), can_fail_rss: canFail(chain.rss) };
  return {
    nominal: chain.nominal,
    middle: chain.middle,
    worst_case: ends(chain.worst),
    worst_case_half: chain.worstHalf,
    rss_half: chain.rssHalf,
    rss: ends(chain.rss),
    rss_share_percent: chain.sharePercent,
    ...verdicts,
    mean: chain.middle,
    tolerance: chain.worstHalf,
    max: chain.worst.most,
    min: chain.worst.least,
    L4: [chain.middle, chain.rssHalf],
  };
}

function lastWorst(inputs: Record<string, unknown>): Answers {
  const { coef, tolerance_half: half } = inputs.last as Row;
  const found = lastPieceWorstCase(
    linksOf(inputs),
    { coefficient: coef!, halfTolerance: half! },
    inputs.least_closing as number,
  );
  return {
    last_nominal: found.lastMiddle,
    closing_mean: found.closingMiddle,
    d: found.lastMiddle,
    w_mean: found.closingMiddle,
  };
}

function normal(inputs: Record<string, unknown>): Answers {
  const found = closingDistribution(
    (inputs.links as Row[]).map((row) => ({
      coefficient: row.coef!,
      centre: row.mean!,
      shape: 'normal',
      half: row.sd!,
    })),
  );
  const asked = inputs.ask as Record<string, [number | null, number | null]>;
  const chances = Object.entries(asked).map(([name, [low, high]]) => [
    name,
    found.cdf(high ?? Infinity) - found.cdf(low ?? -Infinity),
  ]);
  return {
    mean: found.mean,
    sd: found.sd,
    variance: found.sd ** 2,
    ...Object.fromEntries(chances),
  };
}

/** Those of three and of two sigma, and the round ones about them. */
const chances = [0.00135, 0.005, 0.025, 0.05, 0.5, 0.95, 0.975, 0.995, 0.99865];

const run = { draws: 1_000_000, seed: 1_010_2008, coverage: 0.95 };

function distribution(inputs: Record<string, unknown>): Answers {
  const links = (inputs.links as Record<string, unknown>[]).map((row): UncertainLink => ({
    coefficient: row.coef as number,
    centre: row.centre as number,
    shape: row.shape as UncertainLink['shape'],
    half: row.half as number,
  }));
  const [low, high] = (inputs.wanted ?? [null, null]) as [number | null, number | null];
  const exact = closingDistribution(links);
  const drawn = monteCarlo(
    (values) => values.reduce((sum, value, i) => sum + links[i]!.coefficient * value, 0),
    links.map(drawnFrom),
    run,
  );
  const [least, most] = [low ?? -Infinity, high ?? Infinity];
  const inside = drawn.sorted.filter((value) => value >= least && value <= most).length;
  const named = (quantile: (p: number) => number) =>
    Object.fromEntries(chances.map((p) => [String(p), quantile(p)]));
  return {
    mean: exact.mean,
    sd: exact.sd,
    quantiles: named(exact.quantile),
    p_inside: exact.cdf(most) - exact.cdf(least),
    share_of_variance_percent: exact.sharePercent,
    monte_carlo_1e6: {
      quantiles: named((p) => drawn.sorted[Math.round(p * run.draws) - 1]!),
      p_inside: inside / run.draws,
    },
  };
}

function drawnFrom({ centre, shape, half }: UncertainLink): Distribution {
  return shape === 'normal'
    ? { shape, mean: centre, sd: half }
    : { shape, low: centre - half, high: centre + half };
}

function lastMeasured(inputs: Record<string, unknown>): Answers {
  const [least, most] = inputs.closing_limits as [number, number];
  const found = lastPieceFromMeasured(
    (inputs.measured as Row[]).map((row) => ({
      coefficient: row.coef!,
      size: row.size!,
      U: row.U!,
    })),
    {
      coefficient: inputs.last_coef as number,
      aim: inputs.aim as number,
      closing: { least, most },
    },
  );
  const { working } = found;
  return {
    sum_of_measured: found.sumOfMeasured,
    U_of_sum: found.U,
    target: found.target,
    limits: ends(found.limits),
    working_limits: working.kind === 'band' ? ends(working) : null,
  };
}

function nonlinear(inputs: Record<string, unknown>): Answers {
  const values = inputs.values as Row;
  const halves = inputs.tolerance_half as Row;
  const links = Object.fromEntries(
    Object.entries(values).map(([name, value]): [string, FormulaLink] => [
      name,
      { value, halfTolerance: halves[name]! },
    ]),
  );
  const found = formulaChain(inputs.formula as string, links);
  const name = /^\s*([A-Za-z]\w*)\s*=/.exec(inputs.formula as string)?.[1] ?? 'value';
  const unit = /\bin\s+degrees\s*$/.test(inputs.formula as string) ? 'deg' : 'mm';
  const withUnit = (field: string, value: unknown) => ({
    [field]: value,
    [`${field}_${unit}`]: value,
  });
  return {
    ...withUnit(name, found.value),
    sensitivity: found.sensitivities,
    [`sensitivity_${unit}_per_mm`]: found.sensitivities,
    ...withUnit('worst_case_linear', found.worstHalfLinear),
    ...withUnit('rss_linear', found.rssHalfLinear),
    ...withUnit('worst_case_true_corners', ends(found.corners)),
  };
}
