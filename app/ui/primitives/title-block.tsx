import type { ReactNode } from 'react';
import styles from './title-block.module.css';

export type BlockCell = { label: string; value: ReactNode };

type Props = { left: readonly BlockCell[]; right?: readonly BlockCell[] };

/** The block at the foot of a drawing: which sheet, in what units, by whom, kept when. */
export function TitleBlock({ left, right = [] }: Props) {
  return (
    <footer className={styles.footer}>
      <dl className={styles.block}>
        {left.map((cell) => (
          <Cell key={cell.label} {...cell} />
        ))}
        <div className={styles.blank} aria-hidden />
        {right.map((cell) => (
          <Cell key={cell.label} {...cell} />
        ))}
      </dl>
    </footer>
  );
}

function Cell({ label, value }: BlockCell) {
  return (
    <div className={styles.cell}>
      <dt className={styles.label}>{label}</dt>
      <dd className={styles.value}>{value}</dd>
    </div>
  );
}
