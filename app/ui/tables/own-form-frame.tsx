import type { FormEvent, ReactNode } from 'react';
import { Button } from '../primitives/button';
import type { OwnForm } from './own-table';
import styles from './tables.module.css';

type Props = Pick<OwnForm<never>, 'busy' | 'onLeave'> & {
  /** On the button that keeps the row. */
  keep: string;
  onSubmit: () => Promise<void>;
  children: ReactNode;
};

/** The frame of a form for a row of the shop's own: its fields, kept or left as they are. */
export function OwnFormFrame({ keep, busy, onSubmit, onLeave, children }: Props) {
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void onSubmit();
  };
  return (
    <form className={styles.form} noValidate onSubmit={submit}>
      {children}
      <div className={styles.acts}>
        <Button kind="main" type="submit" disabled={busy}>
          {keep}
        </Button>
        <Button onClick={onLeave}>Leave it</Button>
      </div>
    </form>
  );
}
