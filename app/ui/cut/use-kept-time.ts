'use client';

import { useSyncExternalStore } from 'react';
import type { CutView } from '@/lib/rules/cuts/cut-view';
import { timeOf } from '@/lib/text/when';
import { useJob } from '../job/job-provider';

const never = () => () => {};

/** "kept 11:52", or how many entries wait to be sent; only the browser knows the reader's own time. */
export function useKeptTime({ cell, steps }: CutView): string {
  const { outbox } = useJob();
  const here = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  const reading = [...cell.earlier, ...cell.readings].at(-1)?.deviceTime;
  const last = cell.readings.length > 0 ? reading : (steps.at(-1)?.cut.deviceTime ?? reading);
  if (outbox.unsent > 0) return `${outbox.unsent} to send`;
  return here && last !== undefined ? `kept ${timeOf(last)}` : '\u00a0';
}
