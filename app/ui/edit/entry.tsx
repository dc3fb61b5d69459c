'use client';

import type { ReactNode } from 'react';
import { Button } from '../primitives/button';
import styles from './edit.module.css';

type Props = {
  id: string;
  title: string;
  remark: string;
  /** Id of the entry that is open; one at a time. */
  open: string | null;
  onOpen: (id: string | null) => void;
  children: ReactNode;
};

/** One line of the job as drawn, and its form while it is open. */
export function Entry({ id, title, remark, open, onOpen, children }: Props) {
  const isOpen = open === id;
  return (
    <div className={styles.entry}>
      <div className={styles.line}>
        <span className={styles.title}>{title}</span>
        <span className={styles.remark}>{remark}</span>
        <Button aria-expanded={isOpen} onClick={() => onOpen(isOpen ? null : id)}>
          {isOpen ? 'Close' : id.startsWith('new ') ? 'Add' : 'Change'}
          <span className="unseen"> {title}</span>
        </Button>
      </div>
      {isOpen && children}
    </div>
  );
}
