import type { ReactNode } from 'react';
import styles from './twin.module.css';

type Props = {
  /** The table. */
  children: ReactNode;
  /** Called as it is opened and closed. */
  onToggle?: (isOpen: boolean) => void;
};

/** What a picture shows, in a table: closed on the screen until asked for; on paper it always stands open. */
export function Twin({ children, onToggle }: Props) {
  return (
    <details className={styles.twin} onToggle={(event) => onToggle?.(event.currentTarget.open)}>
      <summary>The same in a table</summary>
      {children}
    </details>
  );
}
