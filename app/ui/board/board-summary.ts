import type { JobView, PartView } from '@/lib/rules/job-view';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import { resolutionOf } from '../job/cell-shown';
import { runSays } from '../runs/run-says';

/** What the board says of a part that is folded to one line, and whether it is. */
export const boardSummary = {
  /** A part stands open while it is tied in a fit, or has something to decide, or is alone. */
  standsOpen(view: JobView, { part, pieces, features }: PartView): boolean {
    if (view.parts.length <= 2) return true;
    const own = new Set(features.map((feature) => feature.id));
    const tied = view.fits.some(
      (fit) => own.has(fit.internalFeature.id) || own.has(fit.externalFeature.id),
    );
    const ids = new Set(pieces.map((piece) => piece.id));
    const waits = view.decisions.some(
      (decision) => 'pieceId' in decision && ids.has(decision.pieceId),
    );
    return part.struckAt === null && (tied || waits);
  },

  /** The first feature from smallest to largest, and what runs or departs. */
  words(view: JobView, { part, pieces, features }: PartView, shown: Shown): string {
    const run = view.runs.find((candidate) => candidate.feature.partId === part.id);
    const feature = features[0];
    if (feature === undefined) return 'no features yet';
    const cells = pieces.map((piece) => view.cell(piece.id, feature.id));
    const sizes = cells.flatMap((cell) => (cell.size === null ? [] : [cell.size.valuePm]));
    if (sizes.length === 0) return 'nothing measured yet';
    const step = resolutionOf(
      view,
      cells.find((cell) => cell.size !== null)!,
      feature,
    );
    const from = shownLength(Math.min(...sizes), step, shown);
    const to = shownLength(Math.max(...sizes), step, shown);
    const range = `${feature.name.toLowerCase()} ${from === to ? from : `${from} to ${to}`}`;
    const departure = view.sheet.departures.find(
      (candidate) => candidate.partId === part.id && candidate.struckAt === null,
    );
    if (departure !== undefined)
      return `${departure.made}, ${range}. Departure ${departure.number}`;
    return run === undefined ? range : runSays(run, shown).summary;
  },
};
