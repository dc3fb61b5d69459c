'use client';

import { memo, useMemo } from 'react';
import { cutView } from '@/lib/rules/cuts/cut-view';
import { spindleWords, targetWords } from '@/lib/text/bench-target';
import { fateWords } from '@/lib/text/cut-past-words';
import { caughtWords } from '@/lib/text/cut-caught-words';
import { useCutSwitch } from '../cut/cut-switch';
import styles from './target-note.module.css';
import type { Bench } from './use-bench';

type Props = { bench: Bench; trouble: string | null };

/** What the piece is to be made to, between what, and what is left; while it is still to make. */
export const TargetNote = memo(function TargetNote({ bench, trouble }: Props) {
  const { partner, piece, chosen, resolutionPm, cell } = bench;
  const ways = useCutSwitch();
  const caught = useCaught(bench);
  const fate = piece.fate ?? null;
  if (trouble !== null) {
    return (
      <p className={styles.note} role="alert">
        {trouble}
      </p>
    );
  }
  if (fate !== null || caught !== null) {
    return (
      <button
        type="button"
        className={`${styles.note} ${styles.go} ${fate === null ? styles.caught : ''}`}
        onClick={() => ways?.toCut(cell)}
      >
        <span role={fate === null ? 'alert' : undefined}>
          {fate === null ? caught : fateWords(piece.mark, fate)}
        </span>{' '}
        <b className={styles.act}>{fate === null ? 'Decide' : 'More'}</b>
      </button>
    );
  }
  const target = partner?.target ?? null;
  if (target === null) {
    if (cell.verdict?.state !== 'to cut') return null;
    return (
      <button
        type="button"
        className={`${styles.note} ${styles.go}`}
        onClick={() => ways?.toCut(cell)}
      >
        {spindleWords} <b className={styles.act}>Next cut</b>
      </button>
    );
  }
  const sign = target.make === 'external' ? 1 : -1;
  const leftPm = cell.size === null ? null : sign * (cell.size.valuePm - target.targetPm);
  const words = targetWords(
    { ...target, leftPm, mark: piece.mark, partner: partner!.piece.mark, resolutionPm },
    chosen,
  );
  return (
    <button
      type="button"
      className={`${styles.note} ${styles.go}`}
      onClick={() => ways?.toCut(cell)}
    >
      {words.title}: <b className={styles.size}>{words.size}</b>
      <span className={styles.brief}>, {words.brief}. </span>
      <span className={styles.full}>
        . {words.between} {words.left}{' '}
      </span>
      <span className={styles.care}>{spindleWords}</span> <b className={styles.act}>Next cut</b>
    </button>
  );
});

/** That the piece is past what it was made to, as soon as a reading says so; null where it is not. */
function useCaught({ view, cell, piece, feature, chosen, resolutionPm }: Bench): string | null {
  return useMemo(() => {
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
  }, [view, cell, piece, feature, chosen, resolutionPm]);
}
