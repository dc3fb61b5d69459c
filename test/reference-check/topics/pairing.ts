import { bottleneck } from '@/lib/maths/assignment/bottleneck';
import { costMatrix, type Pair } from '@/lib/maths/assignment/cost-matrix';
import { countPairings } from '@/lib/maths/assignment/count-pairings';
import { largestPairing } from '@/lib/maths/assignment/largest-pairing';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { pairPieces, type PairingPurpose } from '@/lib/maths/assignment/pair-pieces';
import type { PairQuestion } from '@/lib/maths/assignment/pair-problem';

export const topic =
  'Pairing pieces: least total, best worst pair, most likely all inside, forbidden and locked pairs';

type Costs = (number | null)[][];

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.kind === 'pieces') return pieces(inputs);
  if (inputs.kind === 'generated') {
    const costs = generated(inputs as Record<string, number>);
    return { check: check(costs), ...matrix(costs) };
  }
  return matrix(inputs.cost as Costs);
}

function matrix(costs: Costs): Record<string, unknown> {
  const legal = costMatrix(costs);
  const most = largestPairing(legal);
  const best = leastTotal(legal);
  const counted = {
    largest_number_of_legal_pairs: most.pairs.length,
    complete: most.complete,
  };
  if (!best.complete) return { ...counted, least_total_with_that_many_pairs: best.total };
  const worst = bottleneck(legal)!;
  return {
    ...counted,
    least_total: best.total,
    bottleneck: worst.worst,
    least_total_at_bottleneck: worst.total,
  };
}

/** The generator at the head of the set: a linear congruence, one or two draws a pair. */
function generated(inputs: Record<string, number>): Costs {
  let state = inputs.seed!;
  const draw = () => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0;
    return state >>> 16;
  };
  return Array.from({ length: inputs.rows! }, () =>
    Array.from({ length: inputs.columns! }, () => {
      const cost = draw() % inputs.modulus!;
      const isForbidden = inputs.forbid_percent! > 0 && draw() % 100 < inputs.forbid_percent!;
      return isForbidden ? null : cost;
    }),
  );
}

function check(costs: Costs): Record<string, unknown> {
  const legal = costs.flat().filter((cost) => cost !== null);
  return {
    first_row_first_5: costs[0]!.slice(0, 5),
    sum_of_legal_costs: legal.reduce((sum, cost) => sum + cost, 0),
    legal_pairs: legal.length,
  };
}

/** The set writes millimetres with at most nine decimals: whole picometres. */
const pm = (mm: unknown) => Math.round((mm as number) * 1e9);

function pieces(inputs: Record<string, unknown>): Record<string, unknown> {
  const boresPm = (inputs.bores_mm as number[]).map(pm);
  const shaftsPm = (inputs.shafts_mm as number[]).map(pm);
  const [minPm, maxPm] = (inputs.clearance_limits_mm as number[]).map(pm) as [number, number];
  const pairsOf = (name: string) =>
    ((inputs[name] ?? []) as number[][]).map(([bore, shaft]): Pair => [bore! - 1, shaft! - 1]);
  const piecesOf = (name: string) => ((inputs[name] ?? []) as number[]).map((place) => place - 1);
  const base = {
    boresPm,
    shaftsPm,
    minPm,
    maxPm,
    aimPm: pm(inputs.aim_mm),
    locked: pairsOf('locked_pairs_1based'),
    forbidden: pairsOf('forbidden_pairs_1based'),
    leftOut: {
      bores: piecesOf('left_out_bores_1based'),
      shafts: piecesOf('left_out_shafts_1based'),
    },
  };
  const paired = (purpose: PairingPurpose) => pairPieces({ ...base, purpose });
  const names = (found: ReturnType<typeof pairPieces>) =>
    found.pairs.map(({ bore, shaft }) => [bore + 1, shaft + 1]);

  const [closest, squares, worst] = [
    paired('closest'),
    paired('closest-squares'),
    paired('worst-best'),
  ];
  const answers: Record<string, unknown> = {
    clearance_um: boresPm.map((bore) => shaftsPm.map((shaft) => (bore - shaft) / 1e6)),
    largest_number_of_legal_pairs: closest.pairs.filter((pair) => pair.inside).length,
    complete: closest.complete,
  };
  if (!closest.complete) return answers;
  answers.closest_to_aim_sum_abs_um = closest.sumOffPm / 1e6;
  answers.closest_to_aim_sum_sq_um2 = squares.sumOffSquaredUm2;
  answers.worst_pair_best_um_from_aim = worst.worstOffPm / 1e6;
  answers.only_pairing_closest_in_squares = names(squares);
  answers.only_pairing = names(closest);
  const legal = legalPairs(base);
  if (Math.max(legal.rows, legal.columns) <= 20) {
    answers.number_of_legal_pairings = countPairings(legal);
  }
  const doubts = doubtsOf(inputs);
  if (doubts !== undefined) {
    const likely = pairPieces({ ...base, purpose: 'most-likely', ...doubts });
    answers.most_likely_all_inside = {
      probability: likely.probabilityAllInside,
      pairs: names(likely),
    };
  }
  return answers;
}

/** One doubt for all clearances, or one for each piece. */
function doubtsOf(inputs: Record<string, unknown>) {
  const [bores, shafts] = [inputs.bores_mm as number[], inputs.shafts_mm as number[]];
  if (inputs.u_clearance_mm !== undefined) {
    const uPm = pm(inputs.u_clearance_mm);
    return { uBoresPm: bores.map(() => uPm), uShaftsPm: shafts.map(() => 0) };
  }
  if (inputs.u_bores_mm === undefined || inputs.u_shafts_mm === undefined) return undefined;
  const each = (u: unknown, sizes: number[]) =>
    Array.isArray(u) ? (u as number[]).map(pm) : sizes.map(() => pm(u));
  return { uBoresPm: each(inputs.u_bores_mm, bores), uShaftsPm: each(inputs.u_shafts_mm, shafts) };
}

/** Pairs inside the limits, not forbidden and not against a lock, among the pieces that take part. */
function legalPairs(base: PairQuestion) {
  const { locked = [], forbidden = [], leftOut = {} } = base;
  const isIn = ([b, s]: Pair, bore: number, shaft: number) => b === bore && s === shaft;
  const isAgainstLock = (bore: number, shaft: number) =>
    locked.some(([b, s]) => (b === bore) !== (s === shaft));
  const taking = (sizes: readonly number[], out: readonly number[] = []) =>
    [...sizes.keys()].filter((piece) => !out.includes(piece));
  return costMatrix(
    taking(base.boresPm, leftOut.bores).map((bore) =>
      taking(base.shaftsPm, leftOut.shafts).map((shaft) => {
        const clearance = base.boresPm[bore]! - base.shaftsPm[shaft]!;
        const isInside = clearance >= base.minPm && clearance <= base.maxPm;
        const isForbidden = forbidden.some((pair) => isIn(pair, bore, shaft));
        return isInside && !isForbidden && !isAgainstLock(bore, shaft) ? 0 : null;
      }),
    ),
  );
}
