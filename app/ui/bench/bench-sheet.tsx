'use client';

import Link from 'next/link';
import { useJob } from '../job/job-provider';
import { BenchOpen } from './bench-open';
import styles from './bench.module.css';
import { useBench } from './use-bench';
import type { Asked } from './use-where';

/** Logging readings, standing up: one piece, one feature, one line that takes everything typed. */
export function BenchSheet({ asked, blind = null }: { asked: Asked; blind?: string | null }) {
  const { view } = useJob();
  const bench = useBench(asked, blind);
  if (bench !== null) return <BenchOpen bench={bench} />;
  return (
    <main className={styles.nothing}>
      <h1>Bench</h1>
      <p className="t-sentence-bench">
        No part of this job has a piece and a feature yet.{' '}
        <Link href={`/jobs/${view.sheet.job.id}/board`}>Add them on the board</Link>, then measure.
      </p>
    </main>
  );
}
