import type { PairingPurpose } from '@/lib/schema/fit';
import { chanceWords } from './chance-words';
import { clearWords } from './clear-words';
import { shownLength, type Shown } from './shown-size';
import type { MarkedSentence } from './step';

/** What a pairing can be best at, as it is offered. */
export const purposeOptions: readonly { value: PairingPurpose; label: string; hint: string }[] = [
  {
    value: 'worst best',
    label: 'Worst pair best',
    hint: 'the furthest from the aim as near as can be',
  },
  { value: 'closest', label: 'Closest to the aim', hint: 'least distance of all pairs together' },
  {
    value: 'most likely',
    label: 'Most likely all inside',
    hint: 'counts how well each size is known',
  },
];

/** What the pairs were chosen for: "Chosen so the worst pair is best." */
export function purposeWords(
  purpose: PairingPurpose,
  facts: { pairs: number; allInside: number | null },
  { decimal }: Shown,
): string {
  if (facts.pairs === 0) return 'No pair lies inside the fit yet.';
  if (purpose === 'worst best') return 'Chosen so the worst pair is best.';
  if (purpose === 'closest') return 'Chosen so all together lie closest to the aim.';
  const all = facts.allInside === null ? '' : `: ${chanceWords(facts.allInside, decimal)}`;
  return `Chosen so that all are most likely inside${all}.`;
}

export type MoveFacts = {
  mark: string;
  /** The partner's part, in the singular: "Liner". */
  partName: string;
  from: {
    mark: string;
    clearancePm: number | null;
    /** Why not any more; null where it would still do. */
    because: 'slack' | 'tight' | 'unsure' | null;
    goneTo: string | null;
  };
  to: { mark: string; clearancePm: number } | null;
};

/** A piece that changed partners: "P3 changed liners: in L3 it had 0.013, too slack; in L6 it has 0.011." */
export function moveWords(
  { mark, partName, from, to }: MoveFacts,
  stepPm: number,
  shown: Shown,
): MarkedSentence {
  const part = partName.toLowerCase();
  const clear = (pm: number) => clearWords(pm, stepPm, shown);
  const why =
    from.because !== null
      ? `, ${reasons[from.because]}`
      : from.goneTo === null
        ? ''
        : `, and ${from.goneTo} has that now`;
  const old = (verb: 'has' | 'had') =>
    from.clearancePm === null
      ? `it was in ${from.mark}`
      : `in ${from.mark} it ${verb} ${clear(from.clearancePm)}${why}`;
  if (to === null) return { mark, says: `has lost its ${part}: ${old('has')}.` };
  const now = `in ${to.mark} it has ${clear(to.clearancePm)}`;
  return { mark, says: `changed ${part}s: ${old('had')}; ${now}.` };
}

const reasons = { slack: 'too slack', tight: 'too tight', unsure: 'too near to say' };

/** How far a pairing goes that is not complete. */
export function shortageWords({ most, of }: { most: number; of: number }): string {
  return `No set of pairs puts all ${of} inside: ${most} is the most.`;
}

/** Said where no work on any piece would complete the pairing. */
export const keptApartWords = 'The pairs kept apart leave no complete set, whatever the sizes.';

export type WorkFacts = {
  internal: string;
  external: string;
  work: 'cut external' | 'cut internal' | 'remake external' | 'remake internal';
  toPm: number;
  takeOffPm: number | null;
};

/** One thing to do, as said at the bench: "Take P3 down 0.012 to 18.012 and it suits L1." */
export function workWords(facts: WorkFacts, stepPm: number, shown: Shown): string {
  const { internal, external, work } = facts;
  const figure = (pm: number) => shownLength(pm, stepPm, shown);
  const to = figure(facts.toPm);
  const off = figure(facts.takeOffPm ?? 0);
  switch (work) {
    case 'cut external':
      return `Take ${external} down ${off} to ${to} and it suits ${internal}.`;
    case 'cut internal':
      return `Open ${internal} by ${off} to ${to} and ${external} suits it.`;
    case 'remake external':
      return `Make ${external} again, to ${to}, for ${internal}.`;
    case 'remake internal':
      return `Make ${internal} again, or sleeve it, to ${to}, for ${external}.`;
  }
}

/** After the moves that are said one by one. */
export function moreMovesWords(count: number): string {
  return count === 1
    ? 'One more piece changed partners.'
    : `${count} more pieces changed partners.`;
}
