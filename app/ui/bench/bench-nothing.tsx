import Link from 'next/link';
import styles from './bench.module.css';

/** A job in which nothing can be measured yet, and where to mend that. */
export function BenchNothing({ jobId }: { jobId: string }) {
  return (
    <main className={styles.nothing}>
      <h1>Bench</h1>
      <p className="t-sentence-bench">
        No part of this job has a piece and a feature yet.{' '}
        <Link href={`/jobs/${jobId}/board`}>Add them on the board</Link>, then measure.
      </p>
    </main>
  );
}
