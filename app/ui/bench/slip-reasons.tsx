'use client';

import { useEffect, useId, useRef, useState, type FormEvent } from 'react';
import { slipReasons } from '@/lib/text/bench-slip';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import styles from './slip-reasons.module.css';

type Props = { onKeep: (reason: string) => void; onBack: () => void };

/** Why a held reading counts after all: the usual reasons are one tap each, another one is typed. */
export function SlipReasons({ onKeep, onBack }: Props) {
  const id = useId();
  const first = useRef<HTMLDivElement>(null);
  const [own, setOwn] = useState('');
  useEffect(() => first.current?.querySelector('button')?.focus(), []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (own.trim() !== '') onKeep(own.trim());
  };
  return (
    <section className={styles.reasons} role="alertdialog" aria-labelledby={id}>
      <h2 id={id} className={styles.title}>
        {slipReasons.title}
      </h2>
      <div ref={first} className={styles.usual}>
        {slipReasons.usual.map((reason) => (
          <Button key={reason} bench onClick={() => onKeep(reason)}>
            {reason}
          </Button>
        ))}
      </div>
      <form className={styles.own} onSubmit={submit}>
        <Field
          bench
          label={slipReasons.own}
          value={own}
          maxLength={200}
          onChange={(event) => setOwn(event.target.value)}
        />
        <Button bench type="submit" disabled={own.trim() === ''}>
          {slipReasons.keep}
        </Button>
      </form>
      <button type="button" className={styles.back} onClick={onBack}>
        {slipReasons.back}
      </button>
    </section>
  );
}
