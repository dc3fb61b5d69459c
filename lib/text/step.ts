import type { Feature } from '@/lib/schema/feature';
import { clearWords } from './clear-words';
import { shownLength, type Shown } from './shown-size';
import { targetFigures, type TargetSizes } from './target-figures';

/** The words of a decision, the mark it begins with set apart so that it can be set in the other face. */
export type MarkedSentence = { mark: string; says: string };

type CellDecision = {
  kind: 'out' | 'unsure' | 'held';
  mark: string;
  featureName: string;
  featureKind: Feature['kind'];
  /** The size as shown; empty when there is none. */
  size: string;
  beyondPm: number;
  side: 'top' | 'bottom' | null;
  /** The limit it is near or beyond, pm; null where there is none. */
  limitPm: number | null;
  resolutionPm: number;
};

/** What a person has to decide about one feature of one piece. */
export function cellDecisionWords(decision: CellDecision, shown: Shown): MarkedSentence {
  const { kind, mark, beyondPm, side, limitPm, resolutionPm } = decision;
  const name = decision.featureName.toLowerCase();
  if (kind === 'held') {
    return { mark, says: `${name}: a reading is held. Say whether it counts.` };
  }
  if (kind === 'unsure') {
    const limit = limitPm === null ? 'its limit' : shownLength(limitPm, resolutionPm, shown);
    return {
      mark,
      says: `${name} is ${decision.size}, too near ${limit} to say. Measure it again, finer.`,
    };
  }
  const amount = shownLength(beyondPm, resolutionPm, shown);
  const size = side === 'top' ? 'large' : 'small';
  const remedy = internal(decision.featureKind)
    ? 'Make its partner to suit, or sleeve it.'
    : 'Find another partner for it, or make it again.';
  return { mark, says: `${name} is ${amount} ${size}. ${remedy}` };
}

/** A measured piece that suits no free partner. */
export function noPartnerWords(mark: string, fitName: string): MarkedSentence {
  return { mark, says: `suits no free partner (${fitName}). Make a new one to it.` };
}

/** A final pair that is no longer what was recorded, or let stand last; null where there was, or is, no size. */
export function pairChangedWords(
  marks: { internal: string; external: string },
  wasPm: number | null,
  nowPm: number | null,
  resolutionPm: number,
  shown: Shown,
): MarkedSentence {
  const figure = (pm: number | null) => (pm === null ? null : clearWords(pm, resolutionPm, shown));
  const [was, is] = [figure(wasPm), figure(nowPm)];
  const now =
    is === null
      ? 'now there is no size to go by'
      : is === was
        ? 'what that stood on has changed'
        : `the readings now give ${is}`;
  return {
    mark: marks.external,
    says: `in ${marks.internal} was recorded ${was === null ? 'without a size' : `with ${was}`}; ${now}.`,
  };
}

/** What to do next, in one line. */
export function makeWords(
  mark: string,
  target: TargetSizes,
  partnerMark: string,
  resolutionPm: number,
  shown: Shown,
): string {
  return `Make ${mark} to ${targetFigures(target, resolutionPm, shown).size}, for ${partnerMark}`;
}

export function measureWords(mark: string, featureName: string): string {
  return `Measure ${mark}, ${featureName.toLowerCase()}`;
}

function internal(kind: Feature['kind']): boolean {
  return kind === 'bore' || kind === 'slot' || kind === 'depth';
}

/** A partner beside a piece on the board: "in L1" of what goes inside, "with P1" of what is around it. */
export function mateWords(mark: string, side: 'internal' | 'external'): string {
  return `${side === 'external' ? 'in' : 'with'} ${mark}`;
}

/** What is said after it; empty where nothing is settled yet. */
export function mateStateWords(state: 'final' | 'locked' | 'chosen' | 'to make'): string {
  return state === 'final' || state === 'to make' ? state : '';
}
