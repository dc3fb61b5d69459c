'use client';

import { useState } from 'react';
import type { RunView } from '@/lib/rules/run-view';
import { exactFigure } from '@/lib/text/exact-figure';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { DialFields } from './dial-fields';
import { readDivision } from './read-division';
import styles from './runs.module.css';

/** What the slide's dial counts, put right for the offsets to come; what was put in before stays as it was. */
export function DialForm({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const { change, trouble, busy } = useThings();
  const { run: kept, feature } = run;
  const [dial, setDial] = useState(kept.dial);
  const as = exactFigure(kept.divisionPm, chosen);
  const [division, setDivision] = useState(as);
  const [error, setError] = useState<string>();
  const keep = () => {
    const read = division === as ? { pm: kept.divisionPm } : readDivision(division, chosen);
    if (typeof read === 'string') return setError(read);
    setError(undefined);
    void change('run', kept.id, { version: kept.version, dial, divisionPm: read.pm });
  };
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <DialFields
        kind={feature.kind}
        dial={dial}
        onDial={setDial}
        division={division}
        onDivision={setDivision}
        error={error}
      />
      <Button type="submit" disabled={busy}>
        This is the dial
      </Button>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </form>
  );
}
