import type { RunPlace } from './run-places';
import { freshTurns } from './run-stretches';
import type { RunView } from './run-view';
import { steadyGap } from './steady-gap';

/** When the next piece should be measured. */
export type NextMeasure = {
  place: RunPlace;
  /** One in so many pieces. */
  every: number;
  /**
   * `few`: too few for a line, so each; `drift`: six times before it meets the limit; `events`: six times
   * between one adjustment and the next; `steady`: a sixth of what has kept by itself so far; `unknown`:
   * steady, and nothing says yet for how long, so each.
   */
  because: 'few' | 'drift' | 'events' | 'steady' | 'unknown';
};

/** Six samples from one adjustment to the next: as `samplingGap` has it of [shainin]. */
const samples = 6;

/** The next piece to measure, by what is known of the run; null when the batch is done. */
export function nextMeasure(view: RunView): NextMeasure | null {
  const { every, because } = gapOf(view);
  const lastMade = view.points.at(-1)?.ordinal ?? 0;
  // The last piece of a batch is measured whatever the gap.
  const place =
    view.pieces.find(({ ordinal }) => ordinal >= lastMade + every) ??
    view.pieces.findLast(({ ordinal }) => ordinal > lastMade);
  return place === undefined ? null : { place, every, because };
}

function gapOf({
  drift,
  piecesLeft,
  events,
  points,
}: RunView): Pick<NextMeasure, 'every' | 'because'> {
  if (drift?.kind !== 'line') return { every: 1, because: 'few' };
  if (piecesLeft !== null) {
    return { every: Math.max(1, Math.floor(piecesLeft / samples)), because: 'drift' };
  }
  const stops = freshTurns(events).filter((turn) => turn > 0);
  const between = stops.slice(1).map((stop, i) => stop - stops[i]!);
  const gap = steadyGap(between, points.at(-1)!.ordinal - (stops.at(-1) ?? 0));
  if (gap === null) return { every: 1, because: 'unknown' };
  return { every: gap.samplePieces, because: between.length === 0 ? 'steady' : 'events' };
}
