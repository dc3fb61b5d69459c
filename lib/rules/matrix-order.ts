import type { FitPiece, FitView } from './fit-view';

/**
 * The rows and columns of the table of clearances: measured pieces from the smallest to the largest, so that
 * what suits what lies along a band; then those to make or to measure, in the order of their numbers.
 */
export function matrixOrder({ internals, externals }: Pick<FitView, 'internals' | 'externals'>) {
  return { rows: bySize(internals), columns: bySize(externals) };
}

function bySize(pieces: readonly FitPiece[]): FitPiece[] {
  const sizeOf = ({ size, stillToCut }: FitPiece) =>
    size === null || stillToCut ? Infinity : size.valuePm;
  return pieces.toSorted((a, b) => {
    const [one, other] = [sizeOf(a), sizeOf(b)];
    return one === other ? a.piece.ordinal - b.piece.ordinal : one - other;
  });
}
