import { MathsInputError } from '../check';
import { assignByLevels } from './assign-by-levels';
import type { Pair } from './cost-matrix';
import { pairProblem, type PairProblem, type PairQuestion } from './pair-problem';

/** One pair of the completed set and what it needs. `toPm` is the new size of the piece. */
export type ReworkedPair = {
  bore: number;
  shaft: number;
  /** Clearance as the pieces are now, pm. */
  clearancePm: number;
} & (
  | { work: 'none' }
  | { work: 'cut-shaft' | 'cut-bore'; toPm: number; takeOffPm: number }
  | { work: 'remake-shaft' | 'remake-bore'; toPm: number }
);

export type LeastRework = {
  /** In the order of the bores. */
  pairs: ReworkedPair[];
  cuts: number;
  remakes: number;
  /** Metal taken off by all cuts together, on diameter, pm. */
  takeOffPm: number;
};

/**
 * The least work that puts every piece of the shorter side into a pair inside
 * the limits: which pieces to cut or to make anew, and to what size.
 *
 * A cut only ever takes metal away: a shaft gets smaller, a bore larger, so a
 * pair that is too tight can be cut to its aim, and one that is too slack needs
 * a new piece. Fewest new pieces come first, then fewest cuts, then the least
 * metal, then clearances nearest the aim. A cut falls on the shaft, or on the
 * bore where the shaft may not be cut; a new piece is a shaft unless `remake`
 * says otherwise. Pieces listed in `uncuttable` (hardened, finished) are never cut.
 *
 * Locked pairs stay together and are reworked the same way. Answers undefined
 * when the forbidden pairs leave no complete pairing whatever the sizes.
 *
 * Cost: O(n^3) for each of the four levels. Source: [burkard-2012]; the order of
 * the levels is common practice, no source.
 *
 * @throws {MathsInputError} `least-rework/sizes`, `least-rework/clearances`, `least-rework/piece`
 *
 * @example
 * // Shaft 1 is 3 um too large for either bore: take it down to its aim.
 * leastRework({ boresPm, shaftsPm, minPm, maxPm, aimPm })?.pairs[1];
 * // { bore: 1, shaft: 1, work: 'cut-shaft', toPm: 19_994_000_000, takeOffPm: 8_000_000, ... }
 */
export function leastRework(
  question: PairQuestion & {
    uncuttable?: { bores?: readonly number[]; shafts?: readonly number[] };
    remake?: 'bore' | 'shaft';
  },
): LeastRework | undefined {
  const problem = pairProblem('least-rework', 'leastRework', question);
  requireUncuttable(question);
  const chosen = choose(question, problem);
  if (chosen === undefined) return undefined;
  const pairs = [...problem.locked, ...chosen]
    .toSorted((a, b) => a[0] - b[0])
    .map(([bore, shaft]) => reworked(question, problem, bore, shaft));
  const takenOff = pairs.flatMap((pair) => ('takeOffPm' in pair ? [pair.takeOffPm] : []));
  return {
    pairs,
    cuts: takenOff.length,
    remakes: pairs.filter((pair) => pair.work.startsWith('remake')).length,
    takeOffPm: takenOff.reduce((sum, one) => sum + one, 0),
  };
}

type Question = Parameters<typeof leastRework>[0];

/** Levels in a square filled up with pieces that are not there and cost nothing. */
function choose(question: Question, problem: PairProblem): Pair[] | undefined {
  const { freeBores, freeShafts, isForbidden } = problem;
  const size = Math.max(freeBores.length, freeShafts.length);
  if (Math.min(freeBores.length, freeShafts.length) === 0) return [];
  const levels = [0, 1, 2, 3].map(() => new Float64Array(size * size));
  const [remakes, cuts, metal, off] = levels as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  freeBores.forEach((bore, r) =>
    freeShafts.forEach((shaft, c) => {
      const k = r * size + c;
      if (isForbidden(bore, shaft)) {
        remakes[k] = Infinity;
        return;
      }
      const pair = reworked(question, problem, bore, shaft);
      if (pair.work === 'none') off[k] = Math.abs(pair.clearancePm - question.aimPm);
      else if ('takeOffPm' in pair) [cuts[k], metal[k]] = [1, pair.takeOffPm];
      else remakes[k] = 1;
    }),
  );
  const columnOfRow = assignByLevels(size, levels);
  if (columnOfRow === undefined) return undefined;
  return freeBores.flatMap((bore, r) => {
    const shaft = freeShafts[columnOfRow[r]!];
    return shaft === undefined ? [] : [[bore, shaft] as const];
  });
}

function reworked(
  question: Question,
  problem: PairProblem,
  bore: number,
  shaft: number,
): ReworkedPair {
  const { boresPm, shaftsPm, minPm, aimPm, uncuttable, remake = 'shaft' } = question;
  const clearancePm = problem.clearancePm(bore, shaft);
  const base = { bore, shaft, clearancePm };
  if (problem.isInside(bore, shaft)) return { ...base, work: 'none' };
  const [boreToPm, shaftToPm] = [shaftsPm[shaft]! + aimPm, boresPm[bore]! - aimPm];
  if (clearancePm < minPm) {
    const takeOffPm = aimPm - clearancePm;
    if (!uncuttable?.shafts?.includes(shaft)) {
      return { ...base, work: 'cut-shaft', toPm: shaftToPm, takeOffPm };
    }
    if (!uncuttable.bores?.includes(bore)) {
      return { ...base, work: 'cut-bore', toPm: boreToPm, takeOffPm };
    }
  }
  return remake === 'shaft'
    ? { ...base, work: 'remake-shaft', toPm: shaftToPm }
    : { ...base, work: 'remake-bore', toPm: boreToPm };
}

function requireUncuttable({ boresPm, shaftsPm, uncuttable }: Question): void {
  const odd =
    uncuttable?.bores?.find((bore) => !(bore in boresPm)) ??
    uncuttable?.shafts?.find((shaft) => !(shaft in shaftsPm));
  if (odd === undefined) return;
  throw new MathsInputError(
    'least-rework/piece',
    `leastRework requires uncuttable pieces that exist, got ${odd}`,
  );
}
