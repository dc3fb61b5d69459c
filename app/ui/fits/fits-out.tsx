'use client';

import { fitsOut } from '@/lib/rules/fits-out';
import { fitOutWords } from '@/lib/text/struck-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { LinkButton } from '../primitives/link-button';
import styles from './fits.module.css';

/** The fits of this job that are out, each with what brings it back. */
export function FitsOut() {
  const { view } = useJob();
  const { change, trouble, busy } = useThings();
  const out = fitsOut(view.sheet);
  if (out.length === 0) return null;
  return (
    <section className={styles.out} aria-label="Fits struck out">
      <ul>
        {out.map((one) => (
          <li key={one.fit.id}>
            <span>{fitOutWords(one.fit.name, one.why === 'struck' ? null : one.feature.name)}</span>{' '}
            {one.why === 'struck' ? (
              <Button
                disabled={busy}
                onClick={() =>
                  void change('fit', one.fit.id, { version: one.fit.version, struck: false })
                }
              >
                Put back<span className="unseen"> {one.fit.name}</span>
              </Button>
            ) : (
              <LinkButton href={`/jobs/${one.fit.jobId}/edit`}>The job as drawn</LinkButton>
            )}
          </li>
        ))}
      </ul>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </section>
  );
}
