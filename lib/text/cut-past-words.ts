import type { Said } from './said';
import { shownLength, type Shown } from './shown-size';
import { targetFigures, type TargetSizes } from './target-figures';

type Clear = {
  mark: string;
  sizePm: number;
  clearancePm: number;
  verdict: { state: string; side: 'top' | 'bottom' | null; beyondPm: number };
};

/** What can become of a piece past its stop, as the rules give it. Lengths in pm. */
export type PastFacts = {
  mark: string;
  partner: string | null;
  side: 'external' | 'internal';
  resolutionPm: number;
  other: Clear | null;
  nearest: Clear | null;
  make: (TargetSizes & { mark: string; provable: boolean }) | null;
  sleevePm: number;
};

export type PastWord = { act: string; says: Said };

/** Each choice with its numbers; null where it is none. */
export function pastWords(
  facts: PastFacts,
  shown: Shown,
): {
  other: PastWord | null;
  none: Said | null;
  make: PastWord | null;
  sleeve: PastWord;
  scrap: PastWord;
} {
  const { mark, other, nearest, make, partner, side, resolutionPm } = facts;
  const figure = (pm: number) => shownLength(pm, resolutionPm, shown);
  const kind = side === 'external' ? 'bore' : 'shaft';
  return {
    other:
      other === null
        ? null
        : {
            act: `Pair ${mark} with ${other.mark}`,
            says: [
              `${other.mark} is ${figure(other.sizePm)}: `,
              { figure: clearWords(other.clearancePm, figure) },
              `, ${stateWords(other.verdict, figure)}.`,
            ],
          },
    none:
      other !== null || nearest === null
        ? null
        : [
            `No free ${kind} suits it. The nearest is ${nearest.mark}: `,
            { figure: clearWords(nearest.clearancePm, figure) },
            `, ${stateWords(nearest.verdict, figure)}.`,
          ],
    make:
      make === null
        ? null
        : {
            act: `Make ${make.mark} to ${mark}`,
            says: makeSays(make, resolutionPm, shown),
          },
    sleeve: {
      act: 'Sleeve it',
      says: [
        'A sleeve has to put back ',
        { figure: figure(facts.sleevePm) },
        ' on diameter and something to cut; until it is in, the piece has no partner.',
      ],
    },
    scrap: {
      act: 'Scrap it',
      says: [
        `${mark} leaves the pairing${partner === null ? '' : `; ${partner} waits for another`}. Its readings stay.`,
      ],
    },
  };
}

/** A piece in a final pair gets no other partner before a person has undone that pair. */
export function finalFirstWords(mark: string, partner: string): string {
  return `${mark} is final with ${partner}. Undo that pair on the Fits sheet first, then it can have another partner.`;
}

/** What has become of a piece, in one sentence. */
export function fateWords(mark: string, fate: 'scrapped' | 'sleeve'): string {
  return fate === 'scrapped'
    ? `${mark} is scrapped. Its readings stay; it has no partner and is not counted.`
    : `${mark} waits for its sleeve. It has no partner until the sleeve is in and measured.`;
}

/** What is written beside the piece for good. */
export function fateNote(
  fate: 'scrapped' | 'sleeve',
  facts: {
    sizePm: number;
    byPm: number;
    stopPm: number;
    partner: string | null;
    resolutionPm: number;
  },
  shown: Shown,
): string {
  const figure = (pm: number) => shownLength(pm, facts.resolutionPm, shown);
  const made = facts.partner === null ? '' : `, made to ${facts.partner}`;
  const what = fate === 'scrapped' ? 'Scrapped' : 'To be sleeved';
  return `${what} at ${figure(facts.sizePm)}, ${figure(facts.byPm)} past ${figure(facts.stopPm)}${made}.`;
}

function makeSays(make: NonNullable<PastFacts['make']>, resolutionPm: number, shown: Shown): Said {
  const { size, largest, smallest } = targetFigures(make, resolutionPm, shown);
  const between = make.provable
    ? `, no larger than ${largest}, no smaller than ${smallest}.`
    : '; these gauges cannot prove it.';
  return [`${make.mark} to `, { figure: size }, between];
}

function clearWords(pm: number, figure: (pm: number) => string): string {
  return pm < 0 ? `${figure(-pm)} tight` : `${figure(pm)} clear`;
}

function stateWords(
  { state, side, beyondPm }: Clear['verdict'],
  figure: (pm: number) => string,
): string {
  if (state === 'inside' || state === 'near') return 'inside';
  if (state === 'unsure') return 'too near a limit to say';
  return `${figure(beyondPm)} too ${side === 'top' ? 'slack' : 'tight'}`;
}
