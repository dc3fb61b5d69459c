'use client';

import { useState, type FormEvent } from 'react';
import { whyUndoneWords } from '@/lib/text/fits-sheet-words';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import styles from './pairs.module.css';

type Props = {
  /** "P3 in L6", for those who hear the page. */
  name: string;
  busy: boolean;
  onUndo: (reason: string) => void;
  /** It stays final after all. */
  onLeave: () => void;
};

/** Undoing a final pair asks why; the answer is kept with who and when. */
export function UndoPair({ name, busy, onUndo, onLeave }: Props) {
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const [lacks, setLacks] = useState(false);
  if (!open) {
    return (
      <Button onClick={() => setOpen(true)}>
        Undo<span className="unseen"> the pair {name}</span>
      </Button>
    );
  }
  return (
    <form className={styles.undo} onSubmit={undo} aria-label={`Undo ${name}`}>
      <Field
        label="Why it is undone"
        hint="kept on the record"
        maxLength={200}
        value={reason}
        autoFocus
        onChange={(event) => {
          setReason(event.target.value);
          setLacks(false);
        }}
        error={lacks ? whyUndoneWords : undefined}
      />
      <div className={styles.buttons}>
        <Button kind="warm" type="submit" disabled={busy}>
          Undo it
        </Button>
        <Button
          onClick={() => {
            setOpen(false);
            onLeave();
          }}
        >
          Leave it final
        </Button>
      </div>
    </form>
  );

  function undo(event: FormEvent) {
    event.preventDefault();
    if (reason.trim() === '') setLacks(true);
    else onUndo(reason.trim());
  }
}
