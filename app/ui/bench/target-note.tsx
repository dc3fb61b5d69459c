'use client';

import { spindleWords, targetWords } from '@/lib/text/bench-target';
import styles from './target-note.module.css';
import type { Bench } from './use-bench';

type Props = { bench: Bench; trouble: string | null };

/** What the piece is to be made to, between what, and what is left; while it is still to make. */
export function TargetNote({ bench, trouble }: Props) {
  const { partner, piece, chosen, resolutionPm, cell } = bench;
  const target = partner?.target ?? null;
  if (target === null) {
    if (cell.verdict?.state !== 'to cut' && trouble === null) return null;
    return <p className={styles.note}>{trouble ?? spindleWords}</p>;
  }
  const leftPm = cell.size === null ? null : cell.size.valuePm - target.targetPm;
  const words = targetWords(
    { ...target, leftPm, mark: piece.mark, partner: partner!.piece.mark, resolutionPm },
    chosen,
  );
  return (
    <p className={styles.note} role={trouble === null ? undefined : 'alert'}>
      {trouble ?? (
        <>
          {words.title}: <b className={styles.size}>{words.size}</b>
          <span className={styles.brief}>, {words.brief}. </span>
          <span className={styles.full}>
            . {words.between} {words.left}{' '}
          </span>
          <span className={styles.care}>{spindleWords}</span>
        </>
      )}
    </p>
  );
}
