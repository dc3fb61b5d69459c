import { useId, type ReactNode } from 'react';
import styles from './panel.module.css';

type Props = {
  title?: string;
  /** At the right of the title: what it stands on. */
  note?: ReactNode;
  /** Something to decide: a warm top edge. */
  decide?: boolean;
  /** Heading level of the title. */
  level?: 2 | 3;
  children: ReactNode;
};

/** A ruled sheet on the bench. */
export function Panel({ title, note, decide = false, level = 2, children }: Props) {
  const id = useId();
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section
      className={`${styles.panel} ${decide ? styles.decide : ''}`}
      {...(title === undefined ? {} : { 'aria-labelledby': id })}
    >
      {title === undefined ? null : (
        <div className={styles.head}>
          <Heading id={id} className={styles.title}>
            {title}
          </Heading>
          {note === undefined ? null : <div className={styles.note}>{note}</div>}
        </div>
      )}
      {children}
    </section>
  );
}
