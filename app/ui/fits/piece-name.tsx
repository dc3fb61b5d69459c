'use client';

import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import { shownSize } from '@/lib/text/shown-size';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import styles from './fits.module.css';

type Props = { fit: FitView; piece: FitPiece };

/** The head of a row or column: the mark, and the size or what is missing. */
export function PieceName({ fit, piece: { piece, size, stillToCut } }: Props) {
  const { view, chosen } = useJob();
  const isInternal = piece.partId === fit.internalFeature.partId;
  const feature = isInternal ? fit.internalFeature : fit.externalFeature;
  const step = resolutionOf(view, view.cell(piece.id, feature.id), feature);
  return (
    <>
      <b>{piece.mark}</b>{' '}
      <span className={styles.remark}>
        {size === null || stillToCut
          ? isInternal
            ? 'not measured'
            : 'to make'
          : shownSize(size, step, chosen).value}
      </span>
    </>
  );
}
