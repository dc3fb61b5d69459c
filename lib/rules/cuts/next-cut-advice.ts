import { dialSetting } from '@/lib/maths/fit/dial-setting';
import { nextCut, type NextCut } from '@/lib/maths/fit/next-cut';
import { verdictOf, type Verdict } from '../verdict';
import type { CutAim } from './cut-aim';
import type { CutStep } from './cut-steps';
import type { LearnedCuts } from './learned-cuts';
import { askedFrom, dialFrom, dialOf, type Slide } from './slide';

/** How deep a cut may be beside those it is learned from and still count as alike. */
const alike = 1.5;

/** A cut that is put on: on the dial, and what that asks for on diameter. */
export type PutOn = { divisions: number; dialPm: number; askedPm: number };

export type CutAdvice =
  /** Nothing is known of its size since the last cut. */
  | { kind: 'measure' }
  | { kind: 'made'; proven: boolean }
  /** Past the limit on the side where no metal can be put back, by so much. */
  | { kind: 'past'; byPm: number }
  /** Within the guard of that limit: too near to say. */
  | { kind: 'too near' }
  /** Turned to where it is lapped; so much is left for that. */
  | { kind: 'lap'; leftPm: number }
  /** Nothing is known of the slide, so nothing can be said of its dial. */
  | { kind: 'no slide' }
  | {
      kind: 'spring';
      /**
       * Too thin to bite; less than a division left; the last cuts took so differently that one division might
       * pass the stop; or the last spring passes took a good part of what is left.
       */
      why: 'thin' | 'less than a division' | 'unsure' | 'springs back';
    }
  | (PutOn & {
      kind: 'cut';
      /**
       * `learning`: two alike first; `as before`: no deeper than those learned from; `two equal`: half of what
       * is left, and again; `last`: to the target.
       */
      how: 'learning' | 'as before' | 'two equal' | 'last';
      /** Held back so that the stop is passed in at most one cut in twenty. */
      cautious: boolean;
    });

export type NextCutFacts = {
  aim: CutAim;
  /** Left on for lapping, on diameter, pm. */
  lapPm: number;
  steps: readonly CutStep[];
  learnt: LearnedCuts;
  slide: Slide | null;
};

/**
 * What to do next with a piece that is being cut: pure, from what it measures, what it is cut to and what the
 * last cuts took.
 *
 * The cut proposed aims at the target by the mean ratio and never has more than a chance of one in twenty to
 * pass the stop. Rounded to whole divisions on the side that leaves metal on. With fewer than two
 * comparable cuts nothing is foretold: a third of what is left, twice, teaches the ratio and leaves a third.
 * That, the half for two equal cuts and the factor of 1.5 are common practice, no source.
 */
export function nextCutAdvice(facts: NextCutFacts): CutAdvice {
  const { aim, slide, learnt } = facts;
  if (aim.now === null) return { kind: 'measure' };
  const settled = settledBy(facts, aim.now.valuePm);
  if (settled !== null) return settled;
  if (slide === null) return { kind: 'no slide' };
  const leftPm = leftToCut(aim, facts.lapPm)!;
  const proposed =
    learnt.learned.kind === 'spread'
      ? byRatio(facts, slide, leftPm)
      : toLearn(facts, slide, leftPm);
  if (proposed !== null && proposed !== 'held back') return proposed;
  if (afterSpring(facts)) return { kind: 'lap', leftPm: leftToCut(aim, 0)! };
  return proposed === null ? thin(slide, leftPm) : { kind: 'spring', why: 'unsure' };
}

/** Metal left on diameter down to where cutting ends, pm; null while the piece is not measured. */
export function leftToCut({ aimPm, now, side }: CutAim, lapPm: number): number | null {
  if (now === null) return null;
  return (side === 'external' ? now.valuePm - aimPm : aimPm - now.valuePm) - lapPm;
}

/** How the size stands to the limits, with the doubt of both. */
export function aimVerdict({ now, limits, limitStandardPm, side }: CutAim): Verdict | null {
  if (now === null) return null;
  const standardPm = Math.hypot(now.standardPm, limitStandardPm);
  const kind = side === 'external' ? 'outside' : 'bore';
  return verdictOf({ valuePm: now.valuePm, standardPm }, limits, kind);
}

/** What is so already, or null where metal is still to come off. */
function settledBy({ aim, lapPm }: NextCutFacts, nowPm: number): CutAdvice | null {
  const { side, limits, provable } = aim;
  const verdict = aimVerdict(aim)!;
  const stopSide = side === 'external' ? 'bottom' : 'top';
  const beyondPm = side === 'external' ? limits.lowerPm - nowPm : nowPm - limits.upperPm;
  if (verdict.state === 'out') return { kind: 'past', byPm: Math.max(0, beyondPm) };
  if (verdict.state === 'inside' || verdict.state === 'near') return { kind: 'made', proven: true };
  const leftPm = leftToCut(aim, lapPm)!;
  if (verdict.state === 'unsure') {
    const isMade = leftPm <= 0 && beyondPm <= 0;
    if (isMade && !provable) return { kind: 'made', proven: false };
    if (verdict.side === stopSide) return { kind: 'too near' };
  }
  const toLapPm = leftToCut(aim, 0)!;
  if (leftPm > 0) return null;
  return toLapPm > 0 ? { kind: 'lap', leftPm: toLapPm } : { kind: 'too near' };
}

/** Two cuts alike, before anything can be foretold. Null where even that is too thin. */
function toLearn({ learnt }: NextCutFacts, slide: Slide, leftPm: number): CutAdvice | null {
  const first = learnt.steps.at(-1);
  if (first !== undefined && leftPm > first.gotPm!) {
    const same = putOn(dialFrom(first.askedPm!, slide), slide);
    if (same !== null) return { ...same, kind: 'cut', how: 'learning', cautious: false };
  }
  for (const share of [3, 2, 1]) {
    const cut = putOn(dialSetting(Math.floor(leftPm / share), dialOf(slide)).dialPm, slide);
    if (cut !== null) return { ...cut, kind: 'cut', how: 'learning', cautious: false };
  }
  return null;
}

/**
 * By the ratio learned. Null where what is left is less than the tool or the dial can do; held back where it is
 * enough for a division, and the chance that this passes the stop is too great.
 */
function byRatio(
  facts: NextCutFacts,
  slide: Slide,
  leftPm: number,
): CutAdvice | 'held back' | null {
  const { aim, lapPm, learnt, steps } = facts;
  const sign = aim.side === 'external' ? 1 : -1;
  const turnToPm = aim.aimPm + sign * lapPm;
  const stopPm = aim.side === 'external' ? aim.noSmallerPm : aim.noLargerPm;
  const toTarget = nextCut(learnt.log!, turnToPm);
  if (toTarget.kind !== 'cut') return toLearn(facts, slide, leftPm);
  const fullPm = toTarget.dialPm;
  const safePm = aim.provable ? cautiousTo(nextCut(learnt.log!, stopPm), fullPm) : fullPm;
  const dialPm = Math.min(fullPm, safePm);
  const deepestPm = Math.max(...learnt.steps.map(({ askedPm }) => askedPm!));
  const lastPm = learnt.steps.at(-1)!.askedPm!;
  const askedPm = askedFrom(dialPm, slide);

  if (askedPm > alike * deepestPm) {
    const as = putOn(dialFrom(deepestPm, slide), slide);
    if (as !== null) return { ...as, kind: 'cut', how: 'as before', cautious: false };
  }
  if (steps.at(-1)?.kind !== 'spring' && springsBack(learnt, slide, leftPm)) {
    return { kind: 'spring', why: 'springs back' };
  }
  if (askedPm * alike < lastPm) {
    const half = putOn(Math.floor(dialPm / 2), slide);
    if (half !== null) return { ...half, kind: 'cut', how: 'two equal', cautious: false };
  }
  const last = putOn(dialPm, slide);
  if (last === null) return putOn(fullPm, slide) === null ? null : 'held back';
  return { ...last, kind: 'cut', how: 'last', cautious: safePm < fullPm };
}

function cautiousTo(next: NextCut, elsePm: number): number {
  return next.kind === 'cut' ? (next.cautiousDialPm ?? elsePm) : elsePm;
}

/** In whole divisions, as far as the dial has them and the tool bites; null where it does not. */
function putOn(dialPm: number, slide: Slide): PutOn | null {
  const divisions = Math.floor(dialPm / slide.divisionPm);
  const whole = divisions * slide.divisionPm;
  const askedPm = askedFrom(whole, slide);
  if (divisions < 1 || askedPm < slide.bitesPm) return null;
  return { divisions, dialPm: whole, askedPm };
}

/** The last spring passes took a division by themselves, and a good part of what is left. */
function springsBack({ springPm }: LearnedCuts, slide: Slide, leftPm: number): boolean {
  if (springPm === null) return false;
  return springPm >= askedFrom(slide.divisionPm, slide) && 5 * springPm >= leftPm;
}

function afterSpring({ steps }: NextCutFacts): boolean {
  return steps.at(-1)?.kind === 'spring';
}

function thin(slide: Slide, leftPm: number): CutAdvice {
  const isThin = leftPm < slide.bitesPm && leftPm >= askedFrom(slide.divisionPm, slide);
  return { kind: 'spring', why: isThin ? 'thin' : 'less than a division' };
}
