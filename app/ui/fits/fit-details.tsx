'use client';

import { useState } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { Button } from '../primitives/button';
import { WantedForm } from './wanted-form';
import styles from './fits.module.css';

/** The two ways to change what is wanted: this fit, or another one beside it. */
export function FitDetails({ fit }: { fit: FitView }) {
  const [open, setOpen] = useState<'change' | 'new' | null>(null);
  if (open === null) {
    return (
      <div className={styles.buttons}>
        <Button onClick={() => setOpen('change')}>Change what is wanted</Button>
        <Button onClick={() => setOpen('new')}>Another fit</Button>
      </div>
    );
  }
  return (
    <section className={styles.card} aria-label="What is wanted">
      <h2>{open === 'change' ? `Wanted: ${fit.fit.name}` : 'Another fit'}</h2>
      <WantedForm
        key={open === 'change' ? `${fit.fit.id} ${fit.fit.version}` : 'new'}
        fit={open === 'change' ? fit.fit : null}
        onDone={() => setOpen(null)}
      />
      <Button onClick={() => setOpen(null)}>Leave it as it is</Button>
    </section>
  );
}
