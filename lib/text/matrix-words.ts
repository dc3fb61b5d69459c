import { chanceWords } from './chance-words';
import { clearWords } from './clear-words';
import { givenStep } from './given-step';
import { listWords } from './list-words';
import { shownLimit } from './shown-limit';
import { shownLength, type Shown } from './shown-size';
import { targetFigures, type TargetSizes } from './target-figures';

type Verdict = {
  state: 'inside' | 'near' | 'unsure' | 'out' | 'to cut';
  side: 'top' | 'bottom' | null;
  beyondPm: number;
  limitPm: number | null;
};

/** What a clearance is to what was wanted, without a full stop. */
export function clearanceVerdict(verdict: Verdict, stepPm: number, shown: Shown): string {
  const { state, side, beyondPm, limitPm } = verdict;
  switch (state) {
    case 'inside':
      return 'inside';
    case 'near':
      return side === 'bottom' ? 'inside, near the least' : 'inside, near the most';
    case 'unsure':
      return limitPm === null
        ? 'unsure, too near a limit to say'
        : `unsure, too near ${shownLimit(limitPm, stepPm, shown)} to say`;
    default: {
      const amount = shownLength(Math.max(beyondPm, stepPm / 2), stepPm, shown);
      return `outside, ${amount} too ${side === 'bottom' ? 'tight' : 'slack'}`;
    }
  }
}

export type PairFacts = {
  internal: string;
  external: string;
  clearancePm: number;
  verdict: Verdict;
  /** Probability that the true clearance is inside. */
  chance: number;
  state: 'final' | 'locked' | 'chosen' | null;
  /** A person keeps these two apart, or has left one of them out. */
  apart: boolean;
  leftOut: string | null;
};

/** One pair of the table in words: what a screen reader says of its cell, and the line under the table. */
export function pairWords(facts: PairFacts, stepPm: number, shown: Shown): string {
  const { internal, external, clearancePm, verdict, chance, state, apart, leftOut } = facts;
  const words = [
    `${external} in ${internal}: ${clearWords(clearancePm, stepPm, shown)}`,
    clearanceVerdict(verdict, stepPm, shown),
    `${chanceWords(chance, shown.decimal)} likely inside`,
    ...(state === null ? [] : [state === 'locked' ? 'locked, kept together' : state]),
    ...(apart ? ['kept apart'] : []),
    ...(leftOut === null ? [] : [`${leftOut} is left out`]),
  ];
  return words.join(', ');
}

/** A piece still to make, in the cell of its partner. */
export function toMakeWords(
  {
    internal,
    external,
    make,
    target,
    aimPm,
  }: {
    internal: string;
    external: string;
    make: 'internal' | 'external';
    target: TargetSizes;
    aimPm: number;
  },
  stepPm: number,
  shown: Shown,
): string {
  const to = targetFigures(target, stepPm, shown).size;
  const [made, partner] = make === 'external' ? [external, internal] : [internal, external];
  return `${made} for ${partner}: to make, to ${to}, aim ${clearWords(aimPm, givenStep(aimPm, stepPm, shown.unit), shown)}`;
}

/** A pair that has no clearance yet: one of the two is not measured, or metal is still to come off. */
export function noClearanceWords(
  { internal, external }: { internal: string; external: string },
  toCut: readonly string[],
): string {
  const why =
    toCut.length === 0
      ? 'not measured'
      : `${listWords(toCut)} ${toCut.length === 1 ? 'is' : 'are'} still to cut`;
  return `${external} in ${internal}: ${why}`;
}

/** The head of a row or column in words. */
export function pieceWords({
  mark,
  size,
  leftOut,
  what,
}: {
  mark: string;
  size: string | null;
  leftOut: boolean;
  what: 'not measured' | 'to make';
}): string {
  return `${mark}, ${size ?? what}${leftOut ? ', left out' : ''}`;
}

/** What a piece is to the pairing, under the table. */
export function leftOutWords(mark: string, leftOut: boolean): string {
  return leftOut
    ? `${mark} is left out: nothing is paired with it.`
    : `${mark} takes part in the pairing.`;
}
