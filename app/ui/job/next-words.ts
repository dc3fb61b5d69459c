import type { JobView } from '@/lib/rules/job-view';
import type { Shown } from '@/lib/text/shown-size';
import { makeWords, measureWords } from '@/lib/text/step';
import { targetStepOf } from './cell-shown';

/** The next step of a job in words. */
export function nextWords(view: JobView, shown: Shown): string | null {
  const { next } = view;
  if (next === null) return null;
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  if (next.kind === 'measure') {
    const feature = view.sheet.features.find((candidate) => candidate.id === next.featureId);
    return measureWords(markOf(next.pieceId), feature?.name ?? '');
  }
  const { pieceId, partnerId } = next.target;
  const fit = view.fits.find((candidate) => candidate.fit.id === next.fitId)!;
  const step = targetStepOf(view, fit, next.target);
  return makeWords(markOf(pieceId), next.target, markOf(partnerId), step, shown);
}
