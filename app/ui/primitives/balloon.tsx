import type { ReactNode } from 'react';
import styles from './balloon.module.css';

/** The ringed number beside a feature on a marked-up drawing; the live one is blue. */
export function Balloon({ live = false, children }: { live?: boolean; children: ReactNode }) {
  return <span className={`${styles.balloon} ${live ? styles.live : ''}`}>{children}</span>;
}
