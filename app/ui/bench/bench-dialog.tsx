'use client';

import { useEffect, useId, useRef, type ReactNode } from 'react';
import { Button } from '../primitives/button';
import styles from './bench-dialog.module.css';

type Props = { title: string; onClose: () => void; children: ReactNode };

/** A sheet laid over the bench: Escape and its one button close it, and the focus goes back to the entry. */
export function BenchDialog({ title, onClose, children }: Props) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-labelledby={id}
      // Told a moment later: by then another list may stand in the place of this one.
      onClose={() => {
        if (dialog.current !== null) onClose();
      }}
    >
      <div className={styles.head}>
        <h2 id={id} className={styles.title}>
          {title}
        </h2>
        <Button onClick={onClose}>Close</Button>
      </div>
      {children}
    </dialog>
  );
}
