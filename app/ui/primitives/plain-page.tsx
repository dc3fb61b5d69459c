import type { ReactNode } from 'react';
import styles from './plain-page.module.css';

/** A page with a few words and no sheet to show. */
export function PlainPage({ title, children }: { title: string; children: ReactNode }) {
  return (
    <main className={styles.page}>
      <h1 className="t-section">{title}</h1>
      {children}
    </main>
  );
}
