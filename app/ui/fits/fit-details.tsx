'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { strikeFitWords } from '@/lib/text/struck-words';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import styles from './fits.module.css';

const WantedForm = dynamic(() => import('./wanted-form').then((one) => one.WantedForm));

type Props = {
  fit: FitView;
  /** Another fit was made, to be looked at. */
  onMade: (fitId: string) => void;
};

/** The ways to change what is wanted: this fit, another one beside it, or this one no longer. */
export function FitDetails({ fit, onMade }: Props) {
  const [open, setOpen] = useState<'change' | 'new' | 'strike' | null>(null);
  if (open === null) {
    return (
      <div className={`${styles.buttons} ${styles.details}`}>
        <Button onClick={() => setOpen('change')}>Change what is wanted</Button>
        <Button onClick={() => setOpen('new')}>Another fit</Button>
        <Button onClick={() => setOpen('strike')}>Strike this fit out</Button>
      </div>
    );
  }
  if (open === 'strike') return <StrikeFit fit={fit} onLeave={() => setOpen(null)} />;
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

/** Asks once more: a fit takes its pairs and targets with it. */
function StrikeFit({ fit, onLeave }: { fit: FitView; onLeave: () => void }) {
  const { change, trouble, busy } = useThings();
  const { id, version, name } = fit.fit;
  return (
    <section className={`${styles.card} ${styles.details}`} aria-label="Strike this fit out">
      <h2>{name}</h2>
      <p className="t-sentence">{strikeFitWords}</p>
      <div className={styles.buttons}>
        <Button
          kind="warm"
          disabled={busy}
          onClick={() => void change('fit', id, { version, struck: true })}
        >
          Strike it out
        </Button>
        <Button onClick={onLeave}>Leave it as it is</Button>
      </div>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </section>
  );
}
