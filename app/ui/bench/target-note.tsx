'use client';

import { memo } from 'react';
import { leftToTarget } from '@/lib/rules/left-to-target';
import { spindleWords, targetWords } from '@/lib/text/bench-target';
import { fateWords } from '@/lib/text/cut-past-words';
import { useCutSwitch } from '../cut/cut-switch';
import styles from './target-note.module.css';
import type { Bench } from './use-bench';
import { useCaught } from './use-caught';

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
  const leftPm = leftToTarget(cell, target, partner!.fit.fit.governs, bench.view.cells);
  const words = targetWords(
    {
      ...target,
      leftPm,
      kind: bench.feature.kind,
      mark: piece.mark,
      partner: partner!.piece.mark,
      resolutionPm,
    },
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
