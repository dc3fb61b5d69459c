import { isOnDiameter, type FeatureKind } from '@/lib/schema/feature-kinds';
import type { LengthUnit } from '@/lib/units/picometres';
import { capital } from './capital';
import { countWord } from './drift-words';
import { ordinalWord } from './ordinal-word';
import { offsetFigures } from './offset-words';
import type { Shown } from './shown-size';

/** What a batch run by zones says, as far as words need it. Lengths in pm. */
export type ZoneWordFacts = {
  run: { dial: 'radius' | 'diameter' };
  feature: { kind: FeatureKind };
  /** What that dial is marked in. */
  dialUnit: LengthUnit;
  pieces: readonly { mark: string; ordinal: number }[];
  zones: {
    steps: readonly { piece: { mark: string }; zone: string; means: string }[];
    state: 'set up' | 'run' | 'second' | 'stop';
    inARow: number;
    move: { onDiameterPm: number; onDialPm: number } | null;
    gap: { samplePieces: number; meanGap: number } | null;
    nextOrdinal: number | null;
    spreadFits: number | null;
  };
};

/** What the last piece means now, and what to do; `decide` where the machine is to be stopped. */
export type ZoneWords = { title: string; says: string; decide: boolean };

const setUpCount = 5;

/** A batch by zones in words: a title, and a sentence or two that say what is so and what to do. */
export function zoneWords(facts: ZoneWordFacts, shown: Shown): ZoneWords {
  const { zones } = facts;
  const last = zones.steps.at(-1);
  switch (zones.state) {
    case 'set up':
      return settingUp(facts);
    case 'run':
      return { title: 'Run on', says: running(facts), decide: false };
    case 'second': {
      const second = nextMark(facts);
      return {
        title: second === null ? 'The batch is made' : `Measure ${second} too`,
        says: `${last!.piece.mark} is ${zoneName(last!.zone)}. Leave the machine as it is: the very next piece decides.`,
        decide: false,
      };
    }
    case 'stop':
      return stopped(facts, shown);
  }
}

/** What the zones say, in a line for the board. */
export function byZonesWords(title: string): string {
  return `by zones: ${title}`;
}

/** Whether the scatter leaves room for zones, where it does not; else empty. */
export function zoneSpreadWords(spreadFits: number | null, { decimal }: Shown): string {
  if (spreadFits === null || spreadFits >= 1) return '';
  const scatters = (6 * spreadFits).toFixed(1).replace('.', decimal);
  return `Zones want the limits at least six scatters apart; here they are ${scatters}. They will stop for nothing, and pieces between samples may be out.`;
}

/** "the middle half", "the high quarter", "over the upper limit". */
export function zoneName(zone: string): string {
  const names: Record<string, string> = {
    green: 'in the middle half',
    'yellow low': 'in the low quarter',
    'yellow high': 'in the high quarter',
    'red low': 'under the lower limit',
    'red high': 'over the upper limit',
  };
  return names[zone] ?? zone;
}

function settingUp(facts: ZoneWordFacts): ZoneWords {
  const { steps, inARow } = facts.zones;
  const last = steps.at(-1);
  const next = nextMark(facts);
  const make = next === null ? 'The batch is made.' : `Make ${next} and measure it.`;
  const left = setUpCount - inARow;
  if (inARow > 0) {
    return {
      title: `${capital(countWord(inARow))} of five`,
      says: `${last!.piece.mark} is in the middle half. ${capital(countWord(left))} more in a row and the batch may run. ${make}`,
      decide: false,
    };
  }
  if (last?.means === 'starts again') {
    return {
      title: 'Count again from none',
      says: `${last.piece.mark} is ${zoneName(last.zone)}. Another outside the middle half asks for an adjustment. ${make}`,
      decide: false,
    };
  }
  return {
    title: 'Set up: five in a row',
    says: `Five pieces one after another in the middle half of the limits, then the batch may run. ${make}`,
    decide: false,
  };
}

function running(facts: ZoneWordFacts): string {
  const { zones, pieces } = facts;
  const last = zones.steps.at(-1)!;
  const so =
    last.means === 'approves'
      ? `${last.piece.mark} is the fifth in a row.`
      : `${last.piece.mark} is ${zoneName(last.zone)}.`;
  const next = nextMark(facts);
  if (next === null) {
    const rest = pieces.length > 0 && pieces.at(-1)!.mark !== last.piece.mark;
    return rest ? `${so} The rest may be made.` : `${so} The batch is made.`;
  }
  if (zones.gap === null) {
    return `${so} Measure ${next} next, and each piece until it has kept for twelve by itself.`;
  }
  const { samplePieces, meanGap } = zones.gap;
  return `${so} Measure ${next} next: ${samplePieces === 1 ? 'each' : `every ${ordinalWord(samplePieces)}`} piece, a sixth of the ${Math.round(meanGap)} it keeps between adjustments.`;
}

function stopped({ zones, run, feature, dialUnit }: ZoneWordFacts, shown: Shown): ZoneWords {
  const [before, last] = zones.steps.slice(-2);
  const only = zones.steps.at(-1)!;
  const again = 'Then five in a row again.';
  if (only.means === 'move the mean') {
    const side = only.zone.endsWith('low') ? 'low' : 'high';
    const both = `${before!.piece.mark} and ${last!.piece.mark} are both ${side}.`;
    if (zones.move === null) {
      const says = `${both} The middle is less than half a division away: turn the insert or find what moved. ${again}`;
      return { title: 'Adjust', says, decide: true };
    }
    const { offset, dial } = offsetFigures(zones.move, dialUnit, shown);
    const way = zones.move.onDiameterPm < 0 ? 'smaller' : 'larger';
    const onDial = isOnDiameter(feature.kind) ? `On the ${run.dial} dial` : 'On its dial';
    return {
      title: `Move it ${offset.slice(1)} ${way}`,
      says: `${both} ${onDial} that is ${dial}. ${again}`,
      decide: true,
    };
  }
  if (only.means === 'spread too large') {
    return {
      title: 'The spread is too large',
      says: `${before!.piece.mark} and ${last!.piece.mark} are on opposite sides: moving the mean would not help. Look for play, a loose chucking, a worn insert. ${again}`,
      decide: true,
    };
  }
  return {
    title: 'Stop',
    says: `${only.piece.mark} is ${zoneName(only.zone)}. Measure it again; if it stands, put the machine right and look at the pieces since the last sample. ${again}`,
    decide: true,
  };
}

function nextMark({ zones, pieces }: ZoneWordFacts): string | null {
  return pieces.find(({ ordinal }) => ordinal === zones.nextOrdinal)?.mark ?? null;
}
