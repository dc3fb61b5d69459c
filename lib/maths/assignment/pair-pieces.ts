import { MathsInputError } from '../check';
import { probabilityBetween } from '../fit/probability-between';
import { bottleneck } from './bottleneck';
import type { CostMatrix, Pair } from './cost-matrix';
import { leastTotal } from './least-total';
import { pairProblem, type PairProblem, type PairQuestion } from './pair-problem';
import { sortedPairs } from './sorted-pairs';
import { sortedStart } from './sorted-start';

/** What the best pairing is. */
export type PairingPurpose =
  /** Least sum of the distances from the aim. */
  | 'closest'
  /** Least sum of their squares: one bad pair weighs more than two fair ones. */
  | 'closest-squares'
  /** The pair furthest from the aim as near as can be, then as `closest`. */
  | 'worst-best'
  /** Largest probability that every pair is inside the limits. */
  | 'most-likely';

export type PairedPieces = {
  /** In the order of the bores. */
  pairs: { bore: number; shaft: number; clearancePm: number; locked: boolean; inside: boolean }[];
  /** Whether every piece of the shorter side has a partner and every pair is inside the limits. */
  complete: boolean;
  /** Pieces in play without a partner. */
  unpairedBores: number[];
  unpairedShafts: number[];
  /** Sum, sum of squares and largest of the distances from the aim, over all pairs. */
  sumOffPm: number;
  sumOffSquaredUm2: number;
  worstOffPm: number;
  /** Probability that all pairs are inside, with `most-likely`; pairs are taken as independent. */
  probabilityAllInside?: number;
};

/**
 * Who goes with whom: the best pairing of measured bores and shafts whose
 * clearance is inside the limits.
 *
 * Locked pairs stay, whatever their clearance, and count in every sum. As many
 * legal pairs as possible come first, the purpose second; with more pieces on
 * one side the ones to spare are chosen too. `most-likely` needs the standard
 * uncertainty of each piece, pm; the cost of a pair is -ln P, P its probability
 * of being inside. Pairings may tie; which of the tied is given is not promised.
 *
 * Exact for `closest` and `worst-best`, which are done on whole picometres; the
 * others to the rounding of doubles.
 *
 * Equal numbers are first put together in the order of their sizes. Where all those
 * pairs are legal nothing can be better, for any purpose but `most-likely` (see
 * sortedPairs), and nothing is searched.
 *
 * Cost: O(n log n) for that; else O(n^3) at worst, near O(n^2) for measured pieces,
 * as the search starts from their sorted order. Source: [burkard-2012].
 *
 * @throws {MathsInputError} `pair-pieces/sizes`, `pair-pieces/clearances`,
 *   `pair-pieces/piece`, `pair-pieces/uncertainty`
 *
 * @example
 * pairPieces({
 *   boresPm: [20_031_000_000, 20_018_000_000], shaftsPm: [19_990_000_000, 20_008_000_000],
 *   minPm: 20_000_000, maxPm: 45_000_000, aimPm: 30_000_000, purpose: 'closest',
 * }).pairs; // bore 0 with shaft 1 (23 um), bore 1 with shaft 0 (28 um)
 */
export function pairPieces(
  question: PairQuestion & {
    purpose: PairingPurpose;
    uBoresPm?: readonly number[];
    uShaftsPm?: readonly number[];
  },
): PairedPieces {
  const problem = pairProblem('pair-pieces', 'pairPieces', question);
  const chance = question.purpose === 'most-likely' ? chanceOf(question, problem) : undefined;
  const costOf = costFunction(question, problem, chance);
  const chosen = choose(question, problem, costOf);
  const pairs = [...problem.locked, ...chosen]
    .toSorted((a, b) => a[0] - b[0])
    .map(([bore, shaft]) => ({
      bore,
      shaft,
      clearancePm: problem.clearancePm(bore, shaft),
      locked: problem.locked.some((pair) => pair[0] === bore),
      inside: problem.isInside(bore, shaft),
    }));
  const off = pairs.map((pair) => Math.abs(pair.clearancePm - question.aimPm));
  const [pairedBores, pairedShafts] = [0, 1].map(
    (side) => new Set(chosen.map((pair) => pair[side])),
  );
  const bores = problem.freeBores.length + problem.locked.length;
  const shafts = problem.freeShafts.length + problem.locked.length;
  const found: PairedPieces = {
    pairs,
    complete: pairs.length === Math.min(bores, shafts) && pairs.every((pair) => pair.inside),
    unpairedBores: problem.freeBores.filter((bore) => !pairedBores!.has(bore)),
    unpairedShafts: problem.freeShafts.filter((shaft) => !pairedShafts!.has(shaft)),
    sumOffPm: off.reduce((sum, one) => sum + one, 0),
    sumOffSquaredUm2: off.reduce((sum, one) => sum + (one / 1e6) ** 2, 0),
    worstOffPm: off.reduce((worst, one) => Math.max(worst, one), 0),
  };
  if (chance !== undefined) {
    found.probabilityAllInside = pairs.reduce((all, one) => all * chance(one.bore, one.shaft), 1);
  }
  return found;
}

type OfPair = (bore: number, shaft: number) => number;

function choose(
  { boresPm, shaftsPm, purpose }: { purpose: PairingPurpose } & PairQuestion,
  problem: PairProblem,
  costOf: OfPair,
): Pair[] {
  const { freeBores, freeShafts, isInside, isForbidden } = problem;
  const [rows, columns] = [freeBores.length, freeShafts.length];
  if (rows === 0 || columns === 0) return [];
  const named = ([r, c]: Pair): Pair => [freeBores[r]!, freeShafts[c]!];
  const isLegal = ([bore, shaft]: Pair) => isInside(bore, shaft) && !isForbidden(bore, shaft);
  const sizes = [
    freeBores.map((bore) => boresPm[bore]!),
    freeShafts.map((shaft) => shaftsPm[shaft]!),
  ] as const;
  const sorted = rows === columns ? sortedPairs(...sizes) : undefined;
  if (sorted !== undefined && purpose !== 'most-likely') {
    const pairs = sorted.map(named);
    if (pairs.every(isLegal)) return pairs;
  }
  const matrix = costsOfLegal(problem, costOf);
  if (purpose === 'worst-best') return (bottleneck(matrix)?.pairs ?? []).map(named);
  if (sorted === undefined) return leastTotal(matrix).pairs.map(named);
  const columnPrices = sortedStart(...sizes, (r, c) =>
    Math.min(costOf(freeBores[r]!, freeShafts[c]!), Number.MAX_SAFE_INTEGER),
  );
  const columnOfRow = new Int32Array(rows);
  for (const [row, column] of sorted) columnOfRow[row] = column;
  return leastTotal(matrix, { columnPrices, columnOfRow }).pairs.map(named);
}

function costsOfLegal(problem: PairProblem, costOf: OfPair): CostMatrix {
  const { freeBores, freeShafts, isInside, isForbidden } = problem;
  const [rows, columns] = [freeBores.length, freeShafts.length];
  const costs = new Float64Array(rows * columns).fill(Infinity);
  for (let r = 0; r < rows; r += 1) {
    const bore = freeBores[r]!;
    for (let c = 0; c < columns; c += 1) {
      const shaft = freeShafts[c]!;
      if (!isInside(bore, shaft) || isForbidden(bore, shaft)) continue;
      costs[r * columns + c] = costOf(bore, shaft);
    }
  }
  return { rows, columns, costs };
}

function costFunction(
  { aimPm, purpose }: { purpose: PairingPurpose } & PairQuestion,
  { clearancePm }: PairProblem,
  chance: OfPair | undefined,
): OfPair {
  if (chance !== undefined) return (bore, shaft) => -Math.log(chance(bore, shaft));
  return purpose === 'closest-squares'
    ? (bore, shaft) => ((clearancePm(bore, shaft) - aimPm) / 1e6) ** 2
    : (bore, shaft) => Math.abs(clearancePm(bore, shaft) - aimPm);
}

function chanceOf(
  question: PairQuestion & { uBoresPm?: readonly number[]; uShaftsPm?: readonly number[] },
  { clearancePm }: PairProblem,
): OfPair {
  const { boresPm, shaftsPm, uBoresPm = [], uShaftsPm = [], minPm, maxPm } = question;
  const fits = uBoresPm.length === boresPm.length && uShaftsPm.length === shaftsPm.length;
  const odd = [...uBoresPm, ...uShaftsPm].find((u) => !(Number.isFinite(u) && u >= 0));
  if (!fits || odd !== undefined) {
    throw new MathsInputError(
      'pair-pieces/uncertainty',
      `pairPieces requires an uncertainty from zero up for each piece, got ${odd ?? 'another number of them'}`,
    );
  }
  return (bore, shaft) =>
    probabilityBetween({
      value: clearancePm(bore, shaft),
      u: Math.hypot(uBoresPm[bore]!, uShaftsPm[shaft]!),
      lower: minPm,
      upper: maxPm,
    });
}
