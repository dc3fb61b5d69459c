'use client';

import type { RunView } from '@/lib/rules/run-view';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import styles from './runs.module.css';

/** Strikes out the run that is shown, which frees its features, and puts struck ones back. */
export function StruckRuns({ run }: { run: RunView | null }) {
  const { view } = useJob();
  const { change, trouble, busy } = useThings();
  const struck = view.sheet.runs.filter(({ struckAt }) => struckAt !== null);
  const nameOf = (featureId: string) =>
    view.sheet.features.find(({ id }) => id === featureId)?.name ?? '';
  if (run === null && struck.length === 0) return null;
  return (
    <div className={styles.form}>
      {run !== null && (
        <>
          <p className="t-sentence">
            A run that was started wrongly is struck out; its readings stay where they are.
          </p>
          <Button
            disabled={busy}
            onClick={() =>
              void change('run', run.run.id, { version: run.run.version, struck: true })
            }
          >
            Strike out the run shown
          </Button>
        </>
      )}
      {struck.map((one) => (
        <p key={one.id} className={styles.aside}>
          <span className="struck">{nameOf(one.featureId)}</span>
          <button
            type="button"
            disabled={busy}
            onClick={() => void change('run', one.id, { version: one.version, struck: false })}
          >
            Put back
          </button>
        </p>
      ))}
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </div>
  );
}
