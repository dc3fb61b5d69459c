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
  const fate = piece.fate === 'scrapped' ? 'scrapped' : piece.fate === 'sleeve' ? 'to sleeve' : '';
  // What became of it is said of the feature it would have been paired by.
  const mated =
    features.find(({ id }) =>
      view.fits.some((one) => one.externalFeature.id === id || one.internalFeature.id === id),
    ) ?? features[0];
  const alone = view.fits.some(({ withoutPartner }) => withoutPartner.includes(piece.id));
  return (
    <tr className={`${styles.row} ${piece.fate === 'scrapped' ? styles.scrapped : ''}`}>
      <th scope="row" className={styles.mark}>
        {piece.mark}
      </th>
      <td className={styles.mate}>
        {fate !== '' && (
          <Link
            href={`/jobs/${piece.jobId}/cut?piece=${piece.id}&feature=${mated?.id ?? ''}`}
            className={styles.mateLink}
          >
            {fate}
          </Link>
        )}
        {alone && <span className={styles.alone}>no partner</span>}
        {mate !== undefined && (
          <Link href={`/jobs/${piece.jobId}/fits`} className={styles.mateLink}>
            {inside ? 'in' : 'with'} {mark}
            {mate.state === 'final' && <span className="unseen">, final</span>}
            {mate.state === 'to make' && <span className="unseen">, to make</span>}
          </Link>
        )}
      </td>
      {features.map((feature, index) => (
        <BoardCell key={feature.id} piece={piece} feature={feature} picked={index === picked} />
      ))}
    </tr>
  );
});
