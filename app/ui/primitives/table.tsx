import type { ReactNode } from 'react';
import styles from './table.module.css';

type Props = {
  caption: string;
  /** Read aloud only: a heading beside the table says it already. */
  captionHidden?: boolean;
  /** Rows 56 high. */
  touch?: boolean;
  /** Wider than its sheet: it slides sideways and the first column stays put. */
  pinned?: boolean;
  /** Head, body and rows. Classes for cells are in `table.module.css`. */
  children: ReactNode;
};

/** A ruled table: no stripes, figures right-aligned on the point. */
export function Table({
  caption,
  captionHidden = false,
  touch = false,
  pinned = false,
  children,
}: Props) {
  const table = (
    <table
      className={`${styles.table} ${touch ? styles.touch : ''} ${pinned ? styles.pinned : ''}`}
    >
      <caption className={captionHidden ? 'unseen' : styles.caption}>{caption}</caption>
      {children}
    </table>
  );
  if (!pinned) return table;
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what slides must be reached by keys
    <section className={styles.slides} aria-label={caption} tabIndex={0}>
      {table}
    </section>
  );
}
