'use client';

import { memo } from 'react';
import type { FitPiece } from '@/lib/rules/fit-view';
import { pieceWords } from '@/lib/text/matrix-words';
import styles from './matrix.module.css';

type Props = {
  piece: FitPiece;
  side: 'row' | 'column';
  /** Its size as shown; null while it has none, or is still to cut. */
  size: string | null;
  index: number;
  leftPx: number;
  isStop: boolean;
};

/** The head of a row or column: the mark, and the size or what is missing. */
export const MatrixHead = memo(function MatrixHead(props: Props) {
  const { piece, side, size, index, leftPx, isStop } = props;
  const { mark } = piece.piece;
  const what = side === 'row' && !piece.stillToCut ? 'not measured' : 'to make';
  return (
    <div
      role={side === 'row' ? 'rowheader' : 'columnheader'}
      className={side === 'row' ? styles.rowHead : styles.columnHead}
      aria-colindex={side === 'row' ? 1 : index + 2}
      aria-label={pieceWords({ mark, size, leftOut: piece.leftOut, what })}
      data-at={side === 'row' ? `${index} -1` : `-1 ${index}`}
      data-out={piece.leftOut ? '' : undefined}
      data-long={mark.length > 3 || (size === null && side === 'row') ? '' : undefined}
      tabIndex={isStop ? 0 : -1}
      {...(side === 'column' ? { style: { left: leftPx } } : {})}
    >
      <b>{mark}</b> <span className={styles.size}>{size ?? what}</span>
    </div>
  );
});
