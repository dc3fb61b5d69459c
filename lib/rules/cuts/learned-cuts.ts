import { cutRatio, cutsLearnedFrom, type CutLog, type CutRatio } from '@/lib/maths/fit/cut-ratio';
import type { CutStep } from './cut-steps';
import { nothingElsewhere, type CutsElsewhere } from './cuts-elsewhere';
import { dialFrom, dialOf, isOnSlide, type SlideDial } from './slide';
import { teaches } from './teaches';

/** What the comparable cuts say of the next one. */
export type LearnedCuts = {
  /**
   * The steps that are learned from, five at the most: the last cuts of this stretch that were asked for and
   * measured, and before them those of other pieces, as many as are wanting.
   */
  steps: CutStep[];
  learned: CutRatio['learned'];
  /** Spring passes of this stretch that were measured, and what they took on the mean, pm. */
  springs: number;
  springPm: number | null;
  /** The stretch as the mathematics takes it; null where no cut of it can be learned from. */
  log: CutLog | null;
};

/**
 * Learns from the cuts since something was last changed. Spring passes are counted apart; a cut that nobody
 * said the asking of, or that was not measured on both sides, moves the size and teaches nothing. `changed`:
 * something has been changed since the last cut, so that nothing is comparable with the next; neither
 * is anything of this piece when the next cut is put on with another slide than its last.
 *
 * The piece's own cuts count first and as the newest; where they are fewer than five, comparable cuts of other
 * pieces (`cutsElsewhere`) make up the number, unless there are fewer than two in all. `nowPm`: what the piece
 * measures now, for one that was not cut yet.
 */
export function learnedCuts(
  steps: readonly CutStep[],
  side: 'external' | 'internal',
  slide: SlideDial,
  changed: boolean,
  { elsewhere = nothingElsewhere, nowPm = null }: Elsewhere = {},
): LearnedCuts {
  const from = Math.max(
    0,
    steps.findLastIndex(({ afresh }) => afresh),
    elsewhere.changed?.before ?? 0,
  );
  const last = steps.findLast(({ kind }) => kind === 'cut')?.cut;
  const other = last !== undefined && !isOnSlide(last, slide);
  const stretch = changed || other ? [] : steps.slice(from);
  const springs = stretch.filter(({ kind, gotPm }) => kind === 'spring' && gotPm !== null);
  const springPm =
    springs.length === 0
      ? null
      : Math.round(springs.reduce((sum, { gotPm }) => sum + gotPm!, 0) / springs.length);
  const own = stretch.filter(teaches);
  const isAlone = changed || own.length + elsewhere.steps.length < 2;
  const usable = isAlone ? own : [...elsewhere.steps, ...own];
  const base = { springs: springs.length, springPm };
  const [first] = usable;
  if (first === undefined) {
    return { ...base, steps: [], learned: { kind: 'nothing' }, log: null };
  }
  const log: CutLog = { side, startPm: first.beforePm!, dial: dialOf(slide), cuts: [] };
  const cuts: CutLog['cuts'][number][] = [];
  let sizePm = first.beforePm!;
  for (const step of usable) {
    // What came off between two cuts that are learned from is nobody's asking, like a spring pass.
    if (step.beforePm! !== sizePm) cuts.push({ kind: 'spring', sizeAfterPm: step.beforePm! });
    cuts.push({
      kind: 'cut',
      dialPm: Math.max(1, dialFrom(step.askedPm!, slide)),
      sizeAfterPm: step.afterPm!,
    });
    sizePm = step.afterPm!;
  }
  const measuredPm = stretch.findLast(({ afterPm }) => afterPm !== null)?.afterPm ?? nowPm;
  const isPut = measuredPm !== null && measuredPm > 0 && measuredPm !== sizePm;
  if (isPut) cuts.push({ kind: 'spring', sizeAfterPm: measuredPm });
  const whole = { ...log, cuts };
  return {
    ...base,
    steps: usable.slice(-cutsLearnedFrom),
    learned: cutRatio(whole).learned,
    log: whole,
  };
}

type Elsewhere = { elsewhere?: CutsElsewhere; nowPm?: number | null };
