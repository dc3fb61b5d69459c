import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { pmPerUnit } from '@/lib/units/picometres';
import { capital } from './capital';
import { countWord } from './drift-words';
import { shownLength, type Shown } from './shown-size';
import { usualResolutionPm } from './usual-resolution';

type Index = { value: number; low: number; high: number };

/** The capability of a run, or why there is none, as far as words need it. */
export type CapabilityFacts =
  | {
      kind: 'none';
      reasons: readonly NoCapabilityReason[];
      pieces: number;
      tolerancePm: number | null;
    }
  | {
      kind: 'figures';
      pieces: number;
      cp: Index | null;
      cpk: Index;
      outside: number;
      /** The sizes between which nearly all pieces lie, pm. */
      between: { lowPm: number; highPm: number };
      resolutionPm: number | null;
      fromNominal: boolean;
    };

export type NoCapabilityReason =
  | 'no limits'
  | 'limits differ'
  | 'no spread'
  | 'too few'
  | 'drifting'
  | 'not steady'
  | 'gauge too coarse'
  | 'not normal';

const wanted = 30;

/**
 * A line of figures, each with its limits; and sentences: what they mean, or why there are none. `each` is what moves
 * along the axis of the run.
 */
export function capabilityWords(
  facts: CapabilityFacts,
  each: 'piece' | 'turn',
  shown: Shown,
): { rows: { label: string; figure: string; range: string }[]; says: string[] } {
  if (facts.kind === 'none') {
    return {
      rows: [],
      says: facts.reasons.map((reason) => reasonWords(reason, facts, each, shown)),
    };
  }
  const row = (label: string, { value, low, high }: Index) => ({
    label,
    figure: index(value, shown),
    range: `${index(low, shown)} to ${index(high, shown)}`,
  });
  return {
    rows: [...(facts.cp === null ? [] : [row('Cp', facts.cp)]), row('Cpk', facts.cpk)],
    says: [
      `ISO 22514, from ${facts.pieces} steady ${each}s, limits at 95 %. ${shareWords(facts.outside)}`,
      betweenWords(facts, shown),
    ],
  };
}

function reasonWords(
  reason: NoCapabilityReason,
  { pieces, tolerancePm }: { pieces: number; tolerancePm: number | null },
  each: 'piece' | 'turn',
  shown: Shown,
): string {
  switch (reason) {
    case 'no limits':
      return 'The drawing gives no limits, so there is nothing to be capable of. With one it can be told.';
    case 'limits differ':
      return 'These features have not the same limits about their nominals. A run of one of them alone has a capability.';
    case 'no spread':
      return 'Every piece reads the same: the gauge shows no spread to go by. Measure with a finer one.';
    case 'too few':
      if (pieces === 0) return `Nothing is measured yet. Thirty steady ${each}s are wanted.`;
      return `${capital(countWord(pieces))} ${each}${pieces === 1 ? ' is' : 's are'} too few to say: thirty steady ones are wanted, ${wanted - pieces} more.`;
    case 'drifting':
      return `It drifts between events, so there is no one spread to speak of. Hold it still by smaller offsets oftener, then thirty ${each}s.`;
    case 'not steady':
      return 'A piece stands farther out than chance puts one of so many. Find what happened there, then thirty steady ones.';
    case 'gauge too coarse': {
      const ask =
        tolerancePm === null
          ? 'a finer gauge'
          : `one that shows ${shownLength(Math.round(tolerancePm / 10), fineStepPm[shown.unit], shown)} or finer`;
      return `The gauge is too coarse for these limits: measure with ${ask}.`;
    }
    case 'not normal':
      return 'The sizes do not lie as a normal distribution does (Anderson and Darling, 5 %), which the indices suppose. Look for two tools or two chucks mixed, or steps of the gauge.';
  }
}

/** "About 1 piece in 4000 outside": an estimate. */
function shareWords(share: number): string {
  if (share < 1e-6) return 'Fewer than 1 piece in a million outside: an estimate.';
  if (share > 0.05) return `About ${Math.round(100 * share)} % of pieces outside: an estimate.`;
  const in1 = 1 / share;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(in1)) - 1);
  return `About 1 piece in ${Math.round(in1 / step) * step} outside: an estimate.`;
}

/** Between which sizes nearly all pieces lie; rounded away from each other, so that what is said holds. */
function betweenWords(
  facts: {
    between: { lowPm: number; highPm: number };
    resolutionPm: number | null;
    fromNominal: boolean;
  },
  shown: Shown,
): string {
  const gaugePm = usualResolutionPm(facts.resolutionPm, shown.unit);
  const stepPm = pmPerUnit(shown.unit) / 10 ** decimalsForResolution(gaugePm, shown.unit);
  const { lowPm, highPm } = facts.between;
  const figure = (pm: number) =>
    shownLength(pm, gaugePm, shown, facts.fromNominal ? 'always' : 'needed');
  const low = figure(Math.round(Math.floor(lowPm / stepPm) * stepPm));
  const high = figure(Math.round(Math.ceil(highPm / stepPm) * stepPm));
  const from = facts.fromNominal ? ' from the nominal' : '';
  return `At least 99 % of pieces made like these lie between ${low} and ${high}${from}, with 95 % confidence (ISO 16269-6), while nothing changes.`;
}

function index(value: number, { decimal }: Shown): string {
  const text = Math.abs(value).toFixed(2).replace('.', decimal);
  return value < 0 ? `\u2212${text}` : text;
}

const fineStepPm = { mm: 100_000, in: 254_000 };
