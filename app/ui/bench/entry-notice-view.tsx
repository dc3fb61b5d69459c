'use client';

import styles from './entry-line.module.css';
import type { Notice } from './entry-notice';

type Props = { notice: Notice; onDismiss: () => void };

/** What the line says back: over it or beside it, never in the way of keys or gauges. */
export function EntryNotice({ notice, onDismiss }: Props) {
  if (notice.kind === 'question') {
    return (
      <div className={styles.notice} data-kind="question" role="alert">
        <p className={styles.says}>{notice.title}</p>
        <div className={styles.answers}>
          {notice.answers.map(({ label, act }, index) => (
            <button key={label} type="button" className={styles.answer} onClick={act}>
              <b className={styles.number}>{index + 1}</b> {label}
            </button>
          ))}
        </div>
      </div>
    );
  }
  const says = <p className={styles.says}>{notice.says}</p>;
  return (
    <div className={styles.notice} data-kind={notice.kind} role="alert">
      {says}
      {notice.kind === 'repeat' ? (
        <button
          type="button"
          className={styles.answer}
          onClick={() => {
            onDismiss();
            notice.keep();
          }}
        >
          Keep it too
        </button>
      ) : null}
    </div>
  );
}
