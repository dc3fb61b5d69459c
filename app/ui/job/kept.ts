'use client';

import { useEffect, useState } from 'react';
import { dayAndTime } from '@/lib/text/when';
import { useJob } from './job-provider';

/** When the last thing of this job was kept, in the words of a title block; what waits comes first. */
export function useKept(): string {
  const { view, outbox } = useJob();
  // The time zone is the reader's: it is known only in the browser, so the first drawing leaves it out.
  const [here, setHere] = useState(false);
  useEffect(() => setHere(true), []);
  if (outbox.unsent > 0) return `${outbox.unsent} to send`;
  const last = view.sheet.readings.at(-1)?.receivedAt ?? view.sheet.job.createdAt;
  return here ? dayAndTime(last) : '…';
}
