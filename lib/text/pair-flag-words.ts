import { formatLength } from '@/lib/units/format-length';
import { clearWords } from './clear-words';
import { clearanceStep, wantedFigure } from './fit-words';
import { givenStep } from './given-step';
import { asMadeWords } from './pair-record-words';
import { shownLength, type Shown } from './shown-size';

type Side = 'internal' | 'external';
/** Readings of one side, in the step of the gauge they were taken with, pm. */
type Read = { side: Side; stepPm: number };
type Limits = { minPm: number; maxPm: number };

/** What a flag on a pair says has changed; the same shape as the rule that raises it. */
export type ChangeFacts =
  | { kind: 'piece struck' | 'piece scrapped' | 'to be sleeved' | 'piece back'; side: Side }
  | { kind: 'no size' | 'sized again'; side: Side }
  | ({ kind: 'taken back' | 'counts too' | 'cut since'; valuesPm: readonly number[] } & Read)
  | ({ kind: 'mistyped'; fromPm: number; toPm: number } & Read)
  | ({ kind: 'moved'; valuePm: number; toPieceId: string } & Read)
  | ({ kind: 'moved place'; valuePm: number; from: string; to: string } & Read)
  | { kind: 'other gauge'; side: Side; fromGaugeId: string; toGaugeId: string }
  | { kind: 'gauge known to'; gaugeId: string; fromPm: number | null; toPm: number | null }
  | { kind: 'gauge reads to'; gaugeId: string; fromPm: number; toPm: number }
  | { kind: 'gauge struck' | 'gauge put back'; gaugeId: string }
  | { kind: 'wanted'; from: Limits; to: Limits }
  | { kind: 'governs'; from: 'extreme' | 'mean'; to: 'extreme' | 'mean' }
  | { kind: 'not known' };

export type FlagNames = {
  internal: string;
  external: string;
  /** The mark of a piece, and the name of a gauge. */
  piece: (id: string) => string;
  gauge: (id: string) => string;
};

type Figure = { clearancePm: number; expandedPm: number } | null;

/** A flag in one line: what was recorded, and what the readings say now. */
export function flagWords(was: Figure, now: Figure, stepPm: number, shown: Shown): string {
  const figure = ({ clearancePm, expandedPm }: NonNullable<Figure>) =>
    asMadeWords(clearancePm, expandedPm, stepPm, shown);
  const recorded = was === null ? 'Recorded without a size' : `Recorded with ${figure(was)}`;
  if (now === null) return `${recorded}; now there is no size to go by.`;
  const is = figure(now);
  return was !== null && is === figure(was)
    ? `${recorded}; it still is, but what it stood on has changed.`
    : `${recorded}; now ${is}.`;
}

/** One thing that has changed under a pair, from what to what. Readings in the step of their own gauge. */
export function changeWords(change: ChangeFacts, names: FlagNames, shown: Shown): string {
  const figure = (pm: number) =>
    shownLength(pm, 'stepPm' in change ? change.stepPm : 1_000_000, shown);
  const mark = 'side' in change ? names[change.side] : '';
  switch (change.kind) {
    case 'taken back':
      return counted(change.valuesPm, figure, `of ${mark}`, 'taken back');
    case 'counts too':
      return counted(change.valuesPm, figure, `of ${mark}`, 'added');
    case 'cut since':
      return `${mark} was cut since; it was ${figure(change.valuesPm[0]!)}.`;
    case 'mistyped':
      return `A reading of ${mark} was corrected from ${figure(change.fromPm)} to ${figure(change.toPm)}.`;
    case 'moved': {
      const to = names.piece(change.toPieceId);
      const place = to === mark ? 'another feature of it' : to;
      return `A reading of ${mark} was moved to ${place}: ${figure(change.valuePm)}.`;
    }
    case 'moved place':
      return `A reading of ${mark}, ${figure(change.valuePm)}, was moved from ${change.from} to ${change.to}.`;
    case 'piece struck':
      return `${mark} was struck out.`;
    case 'piece scrapped':
      return `${mark} was scrapped.`;
    case 'to be sleeved':
      return `${mark} is to be sleeved.`;
    case 'piece back':
      return `${mark} takes part again.`;
    case 'no size':
      return `${mark} has no size any more.`;
    case 'sized again':
      return `${mark} has a size again.`;
    case 'other gauge':
      return `${mark} is told by ${names.gauge(change.toGaugeId)} now; it was ${names.gauge(change.fromGaugeId)}.`;
    case 'gauge known to': {
      const name = names.gauge(change.gaugeId);
      if (change.toPm === null)
        return `How well ${name} is known is open again; it was ${stated(change.fromPm!, shown)}.`;
      if (change.fromPm === null)
        return `${name} is known to ${stated(change.toPm, shown)} now; that was open.`;
      return `${name} is known to ${stated(change.toPm, shown)} now; it was ${stated(change.fromPm, shown)}.`;
    }
    case 'gauge reads to':
      return `${names.gauge(change.gaugeId)} reads to ${stated(change.toPm, shown)}; it was put down as ${stated(change.fromPm, shown)}.`;
    case 'gauge struck':
      return `${names.gauge(change.gaugeId)} was struck out.`;
    case 'gauge put back':
      return `${names.gauge(change.gaugeId)} was put back.`;
    case 'wanted':
      return `Wanted now is ${range(change.to, shown)}; it was ${range(change.from, shown)}.`;
    case 'governs':
      return change.to === 'mean'
        ? 'The mean sizes govern now; it was the smallest bore and the largest shaft.'
        : 'The smallest bore and the largest shaft govern now; it was the mean sizes.';
    case 'not known':
      return 'The sizes are worked out otherwise than when it was recorded.';
  }
}

function counted(
  valuesPm: readonly number[],
  figure: (pm: number) => string,
  of: string,
  what: string,
): string {
  const shownMost = 6;
  const list = valuesPm.slice(0, shownMost).map(figure).join(', ');
  const more = valuesPm.length > shownMost ? `, and ${valuesPm.length - shownMost} more` : '';
  return valuesPm.length === 1
    ? `A reading ${of} was ${what}: ${list}.`
    : `${valuesPm.length} readings ${of} were ${what}: ${list}${more}.`;
}

/** A stated figure with every place it has, to a millionth: 0.0004 as 0.0004, 0.003 as 0.003. */
function stated(pm: number, { unit, decimal }: Shown): string {
  const text = formatLength(pm, { unit, decimals: 6, decimal });
  return text.replace(/0{1,3}$/, '');
}

function range({ minPm, maxPm }: Limits, shown: Shown): string {
  const stepPm = clearanceStep({ minPm, maxPm }, shown.unit);
  const clear = (pm: number) => clearWords(pm, givenStep(pm, stepPm, shown.unit), shown);
  return minPm < 0
    ? `${clear(minPm)} to ${clear(maxPm)}`
    : `${wantedFigure(minPm, shown, stepPm)} to ${clear(maxPm)}`;
}
