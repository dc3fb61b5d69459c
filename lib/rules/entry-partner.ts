import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { cellKey } from './cells';
import type { ChosenPair, FitPiece, FitView } from './fit-view';
import type { JobView, Mate } from './job-view';
import type { Target } from './target';

/** The piece another one is made to, or made for, as the Bench shows it. */
export type EntryPartner = {
  fit: FitView;
  /** The side of the piece on the bench. */
  side: 'internal' | 'external';
  piece: Piece;
  feature: Feature;
  /** The partner's size that decides the fit; null while it is not measured. */
  size: FitPiece['size'];
  state: Mate['state'];
  /** The clearance of the two; null while one of them is not measured or still to cut. */
  pair: ChosenPair | null;
  /** What the piece on the bench is to be made to; null when it is made. */
  target: Target | null;
  /** What is aimed at on the external piece, pm: the partner less the wanted clearance; null else. */
  aimPm: number | null;
};

/** The partner of one feature of one piece, by the fit that names the feature; null where it has none. */
export function entryPartner(
  view: Pick<JobView, 'fits' | 'matesByFeature'>,
  pieceId: string,
  featureId: string,
): EntryPartner | null {
  for (const fit of view.fits) {
    const side =
      fit.externalFeature.id === featureId
        ? 'external'
        : fit.internalFeature.id === featureId
          ? 'internal'
          : null;
    const mate = view.matesByFeature.get(cellKey(pieceId, featureId));
    if (side === null || mate?.fitId !== fit.fit.id) continue;
    const others = side === 'external' ? fit.internals : fit.externals;
    const partner = others.find(({ piece }) => piece.id === mate.pieceId);
    if (partner === undefined) continue;
    const made = side === 'external' ? fit.toMake : fit.toBore;
    const target = made.find((one) => one.pieceId === pieceId);
    const pair = fit.pairs.find(
      (p) => (side === 'external' ? p.externalPieceId : p.internalPieceId) === pieceId,
    );
    const aimOf = () => {
      if (side === 'internal') return target?.targetPm ?? null;
      return partner.size === null ? null : partner.size.valuePm - fit.fit.aimPm;
    };
    return {
      fit,
      side,
      piece: partner.piece,
      feature: side === 'external' ? fit.internalFeature : fit.externalFeature,
      size: partner.size,
      state: mate.state,
      pair: pair ?? null,
      target: target ?? null,
      aimPm: aimOf(),
    };
  }
  return null;
}
