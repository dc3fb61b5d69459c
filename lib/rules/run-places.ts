import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { cellKey, type Cells } from './cells';

/** One turn of a run: a feature on a piece, made in its place in the order. */
export type RunPlace = {
  /** Id of the piece. */
  id: string;
  /** Its turn, from 1; the ordinal of the piece where the run has one feature. */
  ordinal: number;
  /** "W7"; with the feature's name where a piece has several turns. */
  mark: string;
  piece: Piece;
  feature: Feature;
};

/**
 * The turns of a run in the order made.
 *
 * Features of one part: piece after piece, and on each piece feature after feature as they were chosen;
 * pieces not measured keep their turn. Features of several parts: in the order in which each was first
 * read, whatever became of that reading, since nothing else says how the parts were made in turn; what
 * was not read yet follows, part after part. Cost: O(pieces x features), plus a sort.
 */
export function runPlaces(
  features: readonly Feature[],
  allPieces: readonly Piece[],
  cells: Pick<Cells, 'byKey'>,
): RunPlace[] {
  const parts = [...new Set(features.map(({ partId }) => partId))];
  const numbered = parts.flatMap((partId) => {
    const own = features.filter((feature) => feature.partId === partId);
    return allPieces
      .filter((piece) => piece.partId === partId && piece.struckAt === null)
      .sort((a, b) => a.ordinal - b.ordinal)
      .flatMap((piece) =>
        own.map((feature) => ({
          id: piece.id,
          ordinal: (piece.ordinal - 1) * own.length + own.indexOf(feature) + 1,
          mark: own.length === 1 ? piece.mark : `${piece.mark} ${feature.name.toLowerCase()}`,
          piece,
          feature,
        })),
      );
  });
  if (parts.length === 1) return numbered;
  const firstRead = ({ piece, feature }: RunPlace) => {
    const cell = cells.byKey.get(cellKey(piece.id, feature.id));
    const [early, late] = [cell?.earlier[0]?.seq, cell?.readings[0]?.seq];
    return Math.min(early ?? Infinity, late ?? Infinity);
  };
  return numbered
    .map((place, index) => ({ place, index, seq: firstRead(place) }))
    .sort((a, b) => (a.seq === b.seq ? a.index - b.index : a.seq - b.seq))
    .map(({ place }, index) => ({ ...place, ordinal: index + 1 }));
}
