import type { ComponentProps } from 'react';
import { SaveButtons } from '../save/save-buttons';
import styles from './runs.module.css';

/** Under a chart of a run: the ways to take it away, folded up. */
export function SaveChart(props: ComponentProps<typeof SaveButtons>) {
  return (
    <details className={`${styles.more} not-on-paper`}>
      <summary>Save this chart</summary>
      <div className={styles.saves}>
        <SaveButtons {...props} />
      </div>
    </details>
  );
}
