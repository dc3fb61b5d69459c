import { cutView } from '@/lib/rules/cuts/cut-view';
import { caughtWords } from '@/lib/text/cut-caught-words';
import type { Bench } from './use-bench';

/** That the piece is past what it was made to, as soon as a reading says so; null where it is not. */
export function caughtOf({
  view,
  cell,
  piece,
  feature,
  chosen,
  resolutionPm,
}: Bench): string | null {
  if (cell.size === null || cell.verdict?.state === 'to cut') return null;
  const said = { slide: null, lapPm: 0, changed: null, temperatureMilliC: null };
  const at = { pieceId: piece.id, featureId: feature.id };
  const cut = cutView(
    {
      ...view,
      cell: (p, f) => (p === at.pieceId && f === at.featureId ? cell : view.cell(p, f)),
    },
    at,
    said,
  );
  if (cut === null || cut.aim.partner === null) return null;
  const { advice, aim } = cut;
  if (advice.kind !== 'past') return null;
  const stopPm = aim.side === 'external' ? aim.limits.lowerPm : aim.limits.upperPm;
  const partner = view.sheet.pieces.find(({ id }) => id === aim.partner!.pieceId)?.mark ?? '';
  return caughtWords(
    { mark: piece.mark, partner, byPm: advice.byPm, stopPm, resolutionPm },
    chosen,
  );
}
