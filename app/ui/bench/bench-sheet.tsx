'use client';

import { useJob } from '../job/job-provider';
import { BenchNothingLater } from './bench-later';
import { BenchOpen } from './bench-open';
import { useBench } from './use-bench';
import type { Asked } from './use-where';

/** Logging readings, standing up: one piece, one feature, one line that takes everything typed. */
export function BenchSheet({ asked, blind = null }: { asked: Asked; blind?: string | null }) {
  const { view } = useJob();
  const bench = useBench(asked, blind);
  if (bench !== null) return <BenchOpen bench={bench} />;
  return <BenchNothingLater jobId={view.sheet.job.id} />;
}
