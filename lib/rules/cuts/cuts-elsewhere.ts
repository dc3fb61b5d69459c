import type { Feature } from '@/lib/schema/feature';
import type { Cut, CutChange } from '@/lib/schema/fit';
import type { Piece } from '@/lib/schema/part';
import { cutsLearnedFrom } from '@/lib/maths/fit/cut-ratio';
import type { Cell } from '../cells';
import type { Standing } from '../standing';
import { metalLeftSide } from '../verdict';
import { cutsInOrder } from './cuts-in-order';
import { cutSteps, type CutStep } from './cut-steps';
import { isOnSlide, type SlideDial } from './slide';
import { teaches } from './teaches';

/** What the cuts on the other pieces of a job say of the next one on this. */
export type CutsElsewhere = {
  /** The last comparable cuts of the same feature on other pieces, oldest first: five at the most. */
  steps: CutStep[];
  /** The last change noted on another piece or feature, where cuts of this piece came before it. */
  changed: ChangeElsewhere | null;
};

export type ChangeElsewhere = {
  pieceId: string;
  changed: CutChange;
  /** How many of the cuts of this piece that stand were made before it. */
  before: number;
};

/** Nothing was cut elsewhere. */
export const nothingElsewhere: CutsElsewhere = { steps: [], changed: null };

type Facts = {
  /** All cuts, pieces and features of the job. */
  cuts: readonly Cut[];
  pieces: readonly Piece[];
  features: readonly Feature[];
  pieceId: string;
  featureId: string;
  side: 'external' | 'internal';
  /** The slide the next cut is put on with. */
  slide: SlideDial;
  cellOf: (pieceId: string, featureId: string) => Cell | undefined;
  seqOf: (readingId: string) => number | undefined;
  /** The size that governs, from the counted readings of one stretch between cuts of a cell, pm. */
  sizeOf: (cell: Cell) => (readings: readonly Standing[]) => number | null;
  /** Whether a piece of that size and temperature reads so large that its size says little. */
  isTooWarm: (sizePm: number, temperatureMilliC: number) => boolean;
};

/**
 * The last cuts on other pieces that compare with the next one on this: the same feature, asked for with the
 * same slide, and nothing changed since that they were made with.
 *
 * Looked through from the newest back, in the order they were made. It ends at a change noted on any
 * feature that is cut from the same side (inside and outside are cut with different tools: common practice, no source),
 * and at a cut of this feature with another slide. Passed over are cuts of a machine or tool of another name
 * and what was changed on it, cuts that do not say their slide, were not measured on both sides, were measured
 * warm, or are of a piece with a sleeve in it: that is another metal.
 * Struck pieces teach nothing; scrapped ones do.
 *
 * Cost: O(cuts of the job + readings of the cells cut); sizes are worked out of as few pieces as are needed.
 */
export function cutsElsewhere(facts: Facts): CutsElsewhere {
  const { pieceId, featureId, side, slide } = facts;
  const sameSide = new Set(
    facts.features
      .filter(({ kind }) => metalLeftSide(kind) === (side === 'external' ? 'top' : 'bottom'))
      .map(({ id }) => id),
  );
  const order = cutsInOrder({
    ...facts,
    cuts: facts.cuts.filter((cut) => sameSide.has(cut.featureId)),
  });
  const isOwn = (cut: Cut) => cut.pieceId === pieceId && cut.featureId === featureId;
  const isByOther = (cut: Cut) => cut.tool !== '' && !!slide.tool && cut.tool !== slide.tool;
  const changedAt = order.findLastIndex(
    (cut) => notes(cut) !== null && !isOwn(cut) && !isByOther(cut),
  );
  const before = order.slice(0, Math.max(0, changedAt)).filter(isOwn).length;
  const changed =
    before === 0
      ? null
      : { pieceId: order[changedAt]!.pieceId, changed: notes(order[changedAt]!)!, before };
  if (order.some((cut) => isOwn(cut) && cut.changed === 'sleeve')) return { steps: [], changed };

  const struck = new Set(facts.pieces.filter(isStruck).map(({ id }) => id));
  const stepsOf = rememberedSteps(facts, order);
  const steps: CutStep[] = [];
  for (const cut of order.toReversed()) {
    if (isByOther(cut)) continue;
    if (cut.featureId === featureId && !cut.spring && cut.askedPm > 0) {
      if (!isOnSlide(cut, slide)) break;
      const isOther = !isOwn(cut) && !struck.has(cut.pieceId);
      const step = isOther && saysSlide(cut, slide) ? stepsOf(cut) : undefined;
      if (step !== undefined) steps.push(step);
    }
    if (steps.length === cutsLearnedFrom || notes(cut) !== null) break;
  }
  return { steps: steps.reverse(), changed };
}

/** The step of a cut on another piece, undefined where it teaches nothing of this one. */
function rememberedSteps(facts: Facts, order: readonly Cut[]) {
  const { featureId, side, seqOf, cellOf, sizeOf, isTooWarm } = facts;
  const known = new Map<string, Map<string, CutStep>>();
  const ofPiece = (pieceId: string): Map<string, CutStep> => {
    const cell = cellOf(pieceId, featureId);
    if (cell === undefined) return new Map();
    const cuts = order.filter((cut) => cut.pieceId === pieceId && cut.featureId === featureId);
    const steps = cutSteps({ cell, cuts, pieceId, featureId, side, seqOf, sizeOf: sizeOf(cell) });
    const sleeve = steps.findIndex(({ kind }) => kind === 'sleeve');
    const isWarm = (sizePm: number | null, milliC: number | null) =>
      sizePm !== null && milliC !== null && isTooWarm(sizePm, milliC);
    const good = steps.filter(
      (step, i) =>
        teaches(step) &&
        (sleeve === -1 || i < sleeve) &&
        !isWarm(step.beforePm, step.cut.temperatureMilliC ?? null) &&
        !isWarm(step.afterPm, steps[i + 1]?.cut.temperatureMilliC ?? null),
    );
    return new Map(good.map((step) => [step.cut.id, step]));
  };
  return ({ pieceId, id }: Cut): CutStep | undefined => {
    const steps = known.get(pieceId) ?? ofPiece(pieceId);
    known.set(pieceId, steps);
    return steps.get(id);
  };
}

/** What was changed before a cut, of what a tool and its machine are; a sleeve is of its piece alone. */
function notes({ changed }: Cut): Exclude<CutChange, 'sleeve'> | null {
  return changed === 'sleeve' ? null : (changed ?? null);
}

function isStruck({ struckAt }: Piece): boolean {
  return struckAt !== null;
}

/** A fine feed that is not said is none. */
function saysSlide({ dial, divisionPm, fineFeed }: Cut, slide: SlideDial): boolean {
  const isSaid = (dial ?? null) !== null && (divisionPm ?? null) !== null;
  return isSaid && (fineFeed ?? 1) === slide.fineFeed;
}
