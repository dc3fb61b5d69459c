import { requireSize } from './check-fit';
import { cutRatio, cutsLearnedFrom, type CutLog, type CutRatio } from './cut-ratio';

/** What to do next. `leftPm` is on the diameter; below zero the piece is past its target. */
export type NextCut = { ratio: CutRatio; leftPm: number } & (
  | { kind: 'past-target' }
  | { kind: 'no-cut-yet' }
  /** The cuts so far took nothing off, or put it on: there is nothing to go by. */
  | { kind: 'no-ratio' }
  | {
      kind: 'cut';
      /** What to ask for on the diameter and on the dial so that the target is met, pm. */
      askOnDiameterPm: number;
      askOnDialPm: number;
      /** The same in whole divisions, rounded to leave metal on; 0 is a spring pass or a lap. */
      divisions: number;
      dialPm: number;
      /** Size that those divisions will leave by the mean ratio, pm. */
      expectedSizePm: number;
      /** Dial with which the target is passed in at most one cut in twenty; from two cuts on. */
      cautiousDialPm?: number;
    }
);

/**
 * The next cut towards a target, by what the last cuts took against what was
 * asked of them.
 *
 * ask = left / mean ratio, in whole divisions rounded down, so that metal can
 * still come off; cautious = left / upper ratio, likewise. The division count is
 * worked in whole numbers: a cut that asks for exactly sixteen gets sixteen.
 *
 * Source: common practice, no source.
 *
 * @throws {MathsInputError} `next-cut/size`, and what cutRatio throws
 *
 * @example
 * nextCut(log, 24_960_000_000); // kind 'cut', divisions 16, dialPm 160_000_000
 */
export function nextCut(log: CutLog, targetPm: number): NextCut {
  requireSize('next-cut', 'nextCut', 'a target', targetPm);
  const ratio = cutRatio(log);
  const { learned, sizeNowPm } = ratio;
  const leftPm = log.side === 'external' ? sizeNowPm - targetPm : targetPm - sizeNowPm;
  if (leftPm <= 0) return { kind: 'past-target', ratio, leftPm };
  if (learned.kind === 'nothing') return { kind: 'no-cut-yet', ratio, leftPm };
  if (!(learned.mean > 0)) return { kind: 'no-ratio', ratio, leftPm };

  const { divisionPm, reads, fineFeedRatio = 1 } = log.dial;
  const perDial = (reads === 'radius' ? 2 : 1) / fineFeedRatio;
  const askOnDiameterPm = leftPm / learned.mean;
  const divisions = wholeDivisions(log, leftPm);
  const dialPm = divisions * divisionPm;
  const takesPm = Math.round(dialPm * perDial * learned.mean);
  const next = {
    kind: 'cut',
    ratio,
    leftPm,
    askOnDiameterPm,
    askOnDialPm: askOnDiameterPm / perDial,
    divisions,
    dialPm,
    expectedSizePm: log.side === 'external' ? sizeNowPm - takesPm : sizeNowPm + takesPm,
  } as const;
  if (learned.kind === 'mean') return next;
  const cautious =
    learned.sd === 0 ? divisions : Math.floor(leftPm / learned.upper / perDial / divisionPm);
  return { ...next, cautiousDialPm: cautious * divisionPm };
}

/**
 * floor(left n / (sum of got/dial) / division) on whole numbers: the doubling of a radius dial and
 * the fine feed are the same on both sides and cancel.
 */
function wholeDivisions(log: CutLog, leftPm: number): number {
  let beforePm = log.startPm;
  const taken: { dial: bigint; got: bigint }[] = [];
  for (const cut of log.cuts) {
    const change =
      log.side === 'external' ? beforePm - cut.sizeAfterPm : cut.sizeAfterPm - beforePm;
    beforePm = cut.sizeAfterPm;
    if (cut.kind === 'cut') taken.push({ dial: BigInt(cut.dialPm), got: BigInt(change) });
  }
  const last = taken.slice(-cutsLearnedFrom);
  const product = last.reduce((all, { dial }) => all * dial, 1n);
  const sum = last.reduce((all, { dial, got }) => all + (got * product) / dial, 0n);
  const wanted = BigInt(leftPm) * BigInt(last.length) * product;
  return Number(wanted / (sum * BigInt(log.dial.divisionPm)));
}
