import type { ReactNode } from 'react';
import styles from './empty-state.module.css';

/** Nothing here yet: one sentence and one button, on the sheet. */
export function EmptyState({ sentence, children }: { sentence: string; children?: ReactNode }) {
  return (
    <div className={styles.empty}>
      <p className={styles.sentence}>{sentence}</p>
      {children}
    </div>
  );
}
