import { capital } from './capital';
import { shownLength, type Shown } from './shown-size';

type Place = { station: string; direction: string };
type Shape =
  | { kind: 'oval'; amountPm: number; station: number; widestDirection: number }
  | { kind: 'taper'; amountPm: number; wideEnd: 'first' | 'last' }
  | { kind: 'barrel' | 'waist'; amountPm: number; station: number }
  | { kind: 'bell'; amountPm: number; end: 'first' | 'last' };

type Facts = {
  shapes: readonly Shape[];
  reckonedWith: 'partner' | 'aim';
  widest: (Place & { clearancePm: number }) | null;
  tightest: (Place & { clearancePm: number }) | null;
};

type Around = {
  stations: readonly string[];
  directions: readonly string[];
  resolutionPm: number;
  /** Mark of the partner; empty while there is none. */
  partner: string;
};

/**
 * The shape of a piece and what it does to its fit, in whole sentences: "Oval by 0.052 at the top, wide
 * across B. Across B at the top the clearance will reach 0.062 with P1."
 */
export function shapeEffectWords(facts: Facts, around: Around, shown: Shown): string[] {
  const figure = (pm: number) => shownLength(pm, around.resolutionPm, shown);
  const withWhom =
    facts.reckonedWith === 'aim' ? 'with a partner at the aim' : `with ${around.partner}`;
  const where = ({ station, direction }: Place) =>
    [
      around.directions.length > 1 ? `across ${direction}` : '',
      around.stations.length > 1 ? `at the ${station.toLowerCase()}` : '',
    ]
      .filter(Boolean)
      .join(' ') || 'there';
  const found = facts.shapes.map((shape) => shapeWords(shape, around, figure));
  const { tightest, widest } = facts;
  if (tightest !== null) {
    found.push(
      `${capital(where(tightest))} ${tightest.clearancePm < 0 ? `it will be ${figure(-tightest.clearancePm)} tight` : `the clearance will be only ${figure(tightest.clearancePm)}`} ${withWhom}.`,
    );
  }
  if (widest !== null) {
    found.push(
      `${capital(where(widest))} ${widest.clearancePm < 0 ? `it will still be ${figure(-widest.clearancePm)} tight` : `the clearance will reach ${figure(widest.clearancePm)}`} ${withWhom}.`,
    );
  }
  return found;
}

/** Which reading of a piece governs its fit: "bottom, across A" or "the mean of all". */
export function governsWords(place: Place | null, around: Pick<Around, 'stations' | 'directions'>) {
  if (place === null) return 'the mean';
  return [
    around.stations.length > 1 ? place.station : '',
    around.directions.length > 1 ? `across ${place.direction}` : '',
  ]
    .filter(Boolean)
    .join(', ');
}

/** Pieces whose shape does not show in their readings. */
export function noShapeWords(marks: readonly string[]): string {
  return `${marks.join(', ')}: nothing larger than the doubt of the readings.`;
}

/** Pieces read at too few places for a shape to show. */
export function tooFewPlacesWords(marks: readonly string[]): string {
  return `${marks.join(', ')}: read at too few places to tell a shape.`;
}

/** What the choice means, in one sentence. */
export function governsChoiceWords(governs: 'extreme' | 'mean'): string {
  return governs === 'extreme'
    ? 'Each piece counts by its worst place: a bore where it is smallest, a shaft where it is largest.'
    : 'Each piece counts by its mean: somewhere the two are tighter than the figures say.';
}

function shapeWords(shape: Shape, around: Around, figure: (pm: number) => string): string {
  const amount = figure(shape.amountPm);
  const { stations, directions } = around;
  const at = (index: number) => (stations.at(index) ?? '').toLowerCase();
  const alone = stations.length < 2;
  switch (shape.kind) {
    case 'oval':
      return `Oval by ${amount}${alone ? '' : ` at the ${at(shape.station)}`}, wide across ${directions[shape.widestDirection] ?? ''}.`;
    case 'taper': {
      const [wide, narrow] = shape.wideEnd === 'first' ? [0, -1] : [-1, 0];
      return `Tapered: ${at(wide)} ${amount} larger than ${at(narrow)}.`;
    }
    case 'barrel':
      return `Barrelled: ${at(shape.station)} ${amount} larger than the ends.`;
    case 'waist':
      return `Waisted: ${at(shape.station)} ${amount} smaller than the ends.`;
    case 'bell':
      return `Bell-mouthed at the ${at(shape.end === 'first' ? 0 : -1)}: ${amount} larger there than in the rest.`;
  }
}
