import type { RunEventKind } from '@/lib/schema/run';
import { eventWords } from './event-words';
import { dayAndTime } from './when';

/** An entry the notebook would not take, as far as words need it; null where the job open here does not know. */
export type TrayFacts = {
  /** The text of a reading with its unit, the kind of a correction, whether a cut was a spring pass, the event of a run, or only which of the two. */
  what:
    | { text: string; unit: string }
    | { correction: string }
    | { spring: boolean }
    | { event: RunEventKind; isFirst: boolean }
    | { thing: 'cut' | 'runEvent' };
  /** The piece; the one an event came after, or before where it came before the first. */
  mark: string | null;
  feature: string | null;
  /** It is not the thing itself but that it was struck out, or put back. */
  strike?: 'out' | 'back';
  /** Station and direction; empty where there is one place. */
  place: string;
};

/** "Reading 18.004 mm of P1 outside, crown, across A"; of another job where this one does not know it. */
export function trayTitle({ strike, ...facts }: TrayFacts): string {
  if (strike === undefined) return thingTitle(facts);
  return `${strike === 'out' ? 'Struck out' : 'Put back'}: ${thingTitle(facts)}`;
}

function thingTitle({ what, mark, feature, place }: TrayFacts): string {
  if ('event' in what && mark !== null && feature !== null) {
    return `${whatWords(what)} ${what.isFirst ? 'before' : 'after'} ${mark} ${feature.toLowerCase()}`;
  }
  const where =
    mark === null || feature === null
      ? 'of another job'
      : `of ${[`${mark} ${feature.toLowerCase()}`, place].filter(Boolean).join(', ')}`;
  return `${whatWords(what)} ${where}`;
}

/** Why it was refused, and that it is safe. */
export function traySays(refusal: string | null): string {
  const why = refusal === null ? 'No reason was given' : refusal.replace(/\.$/, '');
  return `${why}. It is kept on this device.`;
}

export const trayWords = {
  title: 'The notebook would not take these',
  none: 'Nothing waits here any more.',
  again: 'Send it once more',
  because: 'Put it away, because',
  away: 'Put it away',
  awayTitle: 'Put away on this device',
  awayHint: 'what the notebook would not take',
  after: 'Send it after all',
  trouble: 'That could not be done on this device. Nothing is changed; try it again.',
};

/** Of an entry that was put away: when, why, and that it is in no book. */
export function awaySays({ reason, atMs }: { reason: string; atMs: number }): string {
  const at = dayAndTime(new Date(atMs).toISOString());
  return `Put away ${at}: ${reason.replace(/\.$/, '')}. It is not in the notebook.`;
}

/** Over the Bench while any entry waits. */
export function trayNotice(count: number): string {
  return `The notebook would not take ${count === 1 ? 'one entry' : `${count} entries`}.`;
}

function whatWords(what: TrayFacts['what']): string {
  if ('text' in what) return `Reading ${what.text.trim()} ${what.unit}`;
  if ('correction' in what) return `Correction (${what.correction})`;
  if ('event' in what) return eventWords({ kind: what.event, note: '', at: '' }).title;
  if ('thing' in what) return what.thing === 'cut' ? 'Cut' : 'Event';
  return what.spring ? 'Spring pass' : 'Cut';
}
