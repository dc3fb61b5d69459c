'use client';

import { useMemo } from 'react';
import type { KeptFacts } from '@/lib/text/bench-head';
import { useJob } from '../job/job-provider';
import type { Bench } from './use-bench';
import { useDeviceWord } from './use-device-word';

/** How far what was entered last has come: the disk of this device, then the book. */
export function useKeptFacts({ fresh, last, plan }: Bench): KeptFacts {
  const { pending, outbox } = useJob();
  const device = useDeviceWord();
  const reached = (): KeptFacts['reached'] => {
    if (fresh.list.some(({ failure }) => failure !== null)) return 'not kept';
    if (fresh.list.some(({ kept }) => !kept)) return 'being kept';
    // A correction of a reading long in the book may be what is still to be sent.
    if (last === null) return null;
    if (outbox.unsent > 0) return 'on this device';
    if (fresh.list.some(({ entry }) => entry.id === last.id)) return 'on this device';
    return pending.has(last.id) ? 'on this device' : 'in the book';
  };
  const now = reached();
  const at = last?.deviceTime ?? null;
  const { unsent } = outbox;
  const { held } = plan;
  return useMemo(
    () => ({ reached: now, at, unsent, held, device }),
    [now, at, unsent, held, device],
  );
}
