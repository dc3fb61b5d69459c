'use client';

import Link from 'next/link';
import { memo } from 'react';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { useJob } from '../job/job-provider';
import { BoardCell } from './board-cell';
import styles from './board.module.css';

type Props = { piece: Piece; features: Feature[]; picked: number };

/** One piece: its mark, its mate, and a cell for each feature. */
export const PieceRow = memo(function PieceRow({ piece, features, picked }: Props) {
  const { view } = useJob();
  const mate = view.mates.get(piece.id);
  const mark = view.sheet.pieces.find((other) => other.id === mate?.pieceId)?.mark;
  const fit = view.fits.find((candidate) => candidate.fit.id === mate?.fitId);
  const inside = fit !== undefined && fit.externalFeature.partId === piece.partId;
  return (
    <tr className={styles.row}>
      <th scope="row" className={styles.mark}>
        {piece.mark}
      </th>
      <td className={styles.mate}>
        {mate !== undefined && (
          <Link href={`/jobs/${piece.jobId}/fits`} className={styles.mateLink}>
            {inside ? 'in' : 'with'} {mark}
            {mate.state === 'final' && <span className="unseen">, final</span>}
          </Link>
        )}
      </td>
      {features.map((feature, index) => (
        <BoardCell key={feature.id} piece={piece} feature={feature} picked={index === picked} />
      ))}
    </tr>
  );
});
