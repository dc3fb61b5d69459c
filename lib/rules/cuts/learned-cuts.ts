import { cutRatio, cutsLearnedFrom, type CutLog, type CutRatio } from '@/lib/maths/fit/cut-ratio';
import type { Cut } from '@/lib/schema/fit';
import type { CutStep } from './cut-steps';
import { dialFrom, dialOf, type SlideDial } from './slide';

/** What the comparable cuts say of the next one. */
export type LearnedCuts = {
  /** The steps of this stretch that are learned from: the last five cuts asked for and measured. */
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
 * is anything when the next cut is put on with another slide than the last.
 */
export function learnedCuts(
  steps: readonly CutStep[],
  side: 'external' | 'internal',
  slide: SlideDial,
  changed: boolean,
): LearnedCuts {
  const from = steps.findLastIndex(({ afresh }) => afresh);
  const last = steps.at(-1)?.cut;
  const other = last !== undefined && !isWith(last, slide);
  const stretch = changed || other ? [] : steps.slice(Math.max(0, from));
  const springs = stretch.filter(({ kind, gotPm }) => kind === 'spring' && gotPm !== null);
  const springPm =
    springs.length === 0
      ? null
      : Math.round(springs.reduce((sum, { gotPm }) => sum + gotPm!, 0) / springs.length);
  const usable = stretch.filter(isUsable);
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
  const nowPm = stretch.findLast(({ afterPm }) => afterPm !== null)?.afterPm ?? sizePm;
  if (nowPm !== sizePm) cuts.push({ kind: 'spring', sizeAfterPm: nowPm });
  const whole = { ...log, cuts };
  return {
    ...base,
    steps: usable.slice(-cutsLearnedFrom),
    learned: cutRatio(whole).learned,
    log: whole,
  };
}

function isUsable({ kind, ratio, askedPm, beforePm, afterPm, cut }: CutStep): boolean {
  const isSaid = kind === 'cut' && ratio !== null && askedPm! > 0;
  return isSaid && beforePm! > 0 && afterPm! > 0 && (cut.struckAt ?? null) === null;
}

/** A cut that does not say its slide may have been put on with any. */
function isWith({ dial, divisionPm, fineFeed }: Cut, slide: SlideDial): boolean {
  return (
    (dial ?? slide.dial) === slide.dial &&
    (divisionPm ?? slide.divisionPm) === slide.divisionPm &&
    (fineFeed ?? slide.fineFeed) === slide.fineFeed
  );
}
