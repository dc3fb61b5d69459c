'use client';

import Link from 'next/link';
import { memo } from 'react';
import { cellKey } from '@/lib/rules/cells';
import type { Mate } from '@/lib/rules/job-view';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { mateStateWords, mateWords } from '@/lib/text/step';
import { useJob } from '../job/job-provider';
import { BoardCell } from './board-cell';
import styles from './board.module.css';

type Props = { piece: Piece; features: Feature[]; picked: number };

/** One piece: its mark, its mate at each feature that has one, and a cell for each feature. */
export const PieceRow = memo(function PieceRow({ piece, features, picked }: Props) {
  const { view } = useJob();
  const mates = features.flatMap((feature) => {
    const mate = view.matesByFeature.get(cellKey(piece.id, feature.id));
    return mate === undefined ? [] : [{ feature, mate }];
  });
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
      <td>
        {fate !== '' && (
          <Link
            href={`/jobs/${piece.jobId}/cut?piece=${piece.id}&feature=${mated?.id ?? ''}`}
            className={styles.mateLink}
          >
            {fate}
          </Link>
        )}
        {alone && <span className={styles.alone}>no partner</span>}
        {mates.map(({ feature, mate }) => (
          <MateLink
            key={feature.id}
            piece={piece}
            feature={feature}
            mate={mate}
            named={mates.length > 1}
          />
        ))}
      </td>
      {features.map((feature, index) => (
        <BoardCell key={feature.id} piece={piece} feature={feature} picked={index === picked} />
      ))}
    </tr>
  );
});

/** The partner at one feature, and whether that is settled or still to make. */
function MateLink(props: { piece: Piece; feature: Feature; mate: Mate; named: boolean }) {
  const { piece, feature, mate, named } = props;
  const { view } = useJob();
  const mark = view.sheet.pieces.find((other) => other.id === mate.pieceId)?.mark ?? '';
  const fit = view.fits.find((candidate) => candidate.fit.id === mate.fitId);
  const side = fit?.externalFeature.id === feature.id ? 'external' : 'internal';
  const state = mateStateWords(mate.state);
  return (
    <Link href={`/jobs/${piece.jobId}/fits`} className={styles.mateLink}>
      {mateWords(mark, side)}
      {mate.state === 'final' && ','}
      {state !== '' && (
        <span className={mate.state === 'final' ? styles.mateState : 'unseen'}>
          {mate.state === 'final' ? ` ${state}` : `, ${state}`}
        </span>
      )}
      {named && <span className="unseen">, {feature.name.toLowerCase()}</span>}
    </Link>
  );
}
