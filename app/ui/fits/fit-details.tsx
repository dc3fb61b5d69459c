'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { Button } from '../primitives/button';
import styles from './fits.module.css';

const WantedForm = dynamic(() => import('./wanted-form').then((one) => one.WantedForm));

type Props = {
  fit: FitView;
  /** Another fit was made, to be looked at. */
  onMade: (fitId: string) => void;
};

/** The two ways to change what is wanted: this fit, or another one beside it. */
export function FitDetails({ fit, onMade }: Props) {
  const [open, setOpen] = useState<'change' | 'new' | null>(null);
  if (open === null) {
    return (
      <div className={`${styles.buttons} ${styles.details}`}>
        <Button onClick={() => setOpen('change')}>Change what is wanted</Button>
        <Button onClick={() => setOpen('new')}>Another fit</Button>
      </div>
    );
  }
  return (
    <section className={`${styles.card} ${styles.details}`} aria-label="What is wanted">
      <h2>{open === 'change' ? `Wanted: ${fit.fit.name}` : 'Another fit'}</h2>
      <WantedForm
        key={open === 'change' ? `${fit.fit.id} ${fit.fit.version}` : 'new'}
        fit={open === 'change' ? fit.fit : null}
        onLeave={() => setOpen(null)}
        onDone={(id) => {
          if (open === 'new') onMade(id);
          setOpen(null);
        }}
      />
    </section>
  );
}
