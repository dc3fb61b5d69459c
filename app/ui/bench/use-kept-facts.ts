'use client';

import type { KeptFacts } from '@/lib/text/bench-head';
import { useJob } from '../job/job-provider';
import type { Bench } from './use-bench';
import { useDeviceWord } from './use-device-word';

/** How far the last reading has come: the disk of this device, then the book. */
export function useKeptFacts({ fresh, last, plan }: Bench): KeptFacts {
  const { pending, outbox } = useJob();
  const device = useDeviceWord();
  const reached = (): KeptFacts['reached'] => {
    if (fresh.list.some(({ failure }) => failure !== null)) return 'not kept';
    if (fresh.list.length > 0) return 'being kept';
    if (last === null) return null;
    return pending.has(last.id) ? 'on this device' : 'in the book';
  };
  return {
    reached: reached(),
    at: last?.deviceTime ?? null,
    unsent: outbox.unsent,
    held: plan.held,
    device,
  };
}
