'use client';

import type { FormEvent, ReactNode } from 'react';
import { Button } from '../primitives/button';
import styles from './edit.module.css';

type Props = {
  busy: boolean;
  trouble: string | null;
  onKeep: () => void;
  /** Strikes the thing out; not offered for what is not kept yet. */
  onStrike?: (() => void) | undefined;
  children: ReactNode;
};

/** The frame of a form on the job as drawn: its fields, one button to keep it, one to strike it out. */
export function KeptForm({ busy, trouble, onKeep, onStrike, children }: Props) {
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        onKeep();
      }}
    >
      {children}
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      <div className={styles.buttons}>
        <Button kind="main" type="submit" disabled={busy}>
          Keep it
        </Button>
        {onStrike !== undefined && (
          <Button disabled={busy} onClick={onStrike}>
            Strike it out
          </Button>
        )}
      </div>
    </form>
  );
}
