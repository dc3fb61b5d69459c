'use client';

import type { FitView } from '@/lib/rules/fit-view';
import { isRecord } from '@/lib/rules/pair-row';
import { undoneWords } from '@/lib/text/pair-record-words';
import { useJob } from '../job/job-provider';
import { When } from '../primitives/when';
import styles from './pairs.module.css';

/** Final pairs that were undone stay to be read: which, when, by whom and why. */
export function UndonePairs({ fit, stepPm }: { fit: FitView; stepPm: number }) {
  const { view, chosen } = useJob();
  const undone = view.sheet.pairs.filter(
    (pair) => pair.fitId === fit.fit.id && pair.struckAt === null && isRecord(pair),
  );
  if (undone.length === 0) return null;
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const nameOf = (id: string | null) =>
    view.sheet.people.find((one) => one.id === id)?.name ?? null;
  return (
    <section className={styles.undone} aria-label="Pairs undone">
      <h3 className={styles.small}>Undone</h3>
      <ul>
        {undone.map((pair) => (
          <li key={pair.id}>
            <b className={styles.mark}>
              <span className="struck">
                {markOf(pair.externalPieceId)} in {markOf(pair.internalPieceId)}
              </span>
            </b>{' '}
            {pair.decidedAt !== null && <When at={pair.decidedAt} />}{' '}
            {undoneWords(
              { ...pair, by: nameOf(pair.personId), reason: pair.reason ?? '' },
              stepPm,
              chosen,
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
