'use client';

import { When } from '../primitives/when';
import { useJob } from './job-provider';

/** When the last thing of this job was kept; what waits to be sent comes first. */
export function Kept() {
  const { view, outbox } = useJob();
  if (outbox.unsent > 0) return <>{outbox.unsent} to send</>;
  return <When at={view.sheet.readings.at(-1)?.receivedAt ?? view.sheet.job.createdAt} />;
}
