import { MathsInputError } from '../check';
import { studentTQuantile } from '../distributions/student-t-quantile';
import { requirePicometres, requireSize } from './check-fit';
import { requireDial, type Dial } from './dial-setting';

/** One pass over a piece: a cut with what was put on the dial, or a spring pass with nothing. */
export type Cut =
  { kind: 'cut'; dialPm: number; sizeAfterPm: number } | { kind: 'spring'; sizeAfterPm: number };

/** The cuts of one piece with one tool, in the order they were taken. */
export type CutLog = {
  /** An external feature gets smaller with every cut, an internal one larger. */
  side: 'internal' | 'external';
  startPm: number;
  dial: Dial;
  cuts: readonly Cut[];
};

export type CutRatio = {
  /** Asked and got on diameter, pm; a spring pass asks nothing and has no ratio. */
  cuts: (
    | { kind: 'cut'; askedPm: number; gotPm: number; ratio: number }
    | { kind: 'spring'; gotPm: number }
  )[];
  sizeNowPm: number;
  /** What the last five cuts say of the next one. */
  learned:
    | { kind: 'nothing' }
    | { kind: 'mean'; mean: number; used: 1 }
    /** `upper`: with 95 % the next ratio is not above it. */
    | { kind: 'spread'; mean: number; used: number; sd: number; upper: number };
};

/** How many of the last cuts are learned from. */
export const cutsLearnedFrom = 5;

/**
 * What the cuts so far took off against what was asked for.
 *
 * asked = dial, doubled on a radius dial, over the fine-feed ratio; got = size
 * before less size after on a shaft, the other way about in a bore;
 * ratio = got / asked. mean and sd (n - 1) of the last five ratios;
 * upper = mean + t(0.95, n - 1) sd sqrt(1 + 1/n). Spring passes move the size
 * and are kept apart.
 *
 * Limits: one tool, speed, range of depth and temperature; a change of any of
 * them is a new log. Source: the ratio is common practice, no source; the
 * prediction limit [hahn-meeker-1991].
 *
 * @throws {MathsInputError} `cut-ratio/size`, `cut-ratio/picometres`, `cut-ratio/dial`, `dial-setting/dial`
 *
 * @example
 * cutRatio({ side: 'external', startPm, dial, cuts: [{ kind: 'cut', dialPm, sizeAfterPm }] }).learned;
 * // { kind: 'mean', mean: 0.98, used: 1 }
 */
export function cutRatio(log: CutLog): CutRatio {
  requireLog(log);
  const perDial = (log.dial.reads === 'radius' ? 2 : 1) / (log.dial.fineFeedRatio ?? 1);
  let sizeNowPm = log.startPm;
  const cuts = log.cuts.map((cut) => {
    const change = cut.sizeAfterPm - sizeNowPm;
    const gotPm = log.side === 'external' ? 0 - change : change;
    sizeNowPm = cut.sizeAfterPm;
    if (cut.kind === 'spring') return { kind: cut.kind, gotPm };
    const askedPm = cut.dialPm * perDial;
    return { kind: cut.kind, askedPm, gotPm, ratio: gotPm / askedPm };
  });
  const ratios = cuts.flatMap((cut) => (cut.kind === 'cut' ? [cut.ratio] : []));
  return { cuts, sizeNowPm, learned: learnedFrom(ratios.slice(-cutsLearnedFrom)) };
}

function learnedFrom(ratios: readonly number[]): CutRatio['learned'] {
  const used = ratios.length;
  if (used === 0) return { kind: 'nothing' };
  // Taken from the first ratio, so that equal ratios have exactly that mean and no spread.
  const first = ratios[0]!;
  const mean = first + ratios.reduce((sum, ratio) => sum + (ratio - first), 0) / used;
  if (used === 1) return { kind: 'mean', mean, used };
  const squares = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0);
  const sd = Math.sqrt(squares / (used - 1));
  const upper = mean + studentTQuantile(0.95, used - 1) * sd * Math.sqrt(1 + 1 / used);
  return { kind: 'spread', mean, used, sd, upper };
}

function requireLog({ startPm, dial, cuts }: CutLog): void {
  requireDial(dial);
  requireSize('cut-ratio', 'cutRatio', 'a starting size', startPm);
  cuts.forEach((cut, i) => {
    requireSize('cut-ratio', 'cutRatio', `the size after cut ${i}`, cut.sizeAfterPm);
    if (cut.kind === 'spring') return;
    requirePicometres('cut-ratio', 'cutRatio', `the dial of cut ${i}`, cut.dialPm);
    if (cut.dialPm > 0) return;
    throw new MathsInputError(
      'cut-ratio/dial',
      `cutRatio requires cuts above zero on the dial, got ${cut.dialPm} at cut ${i}`,
    );
  });
}
