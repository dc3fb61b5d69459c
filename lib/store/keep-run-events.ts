import type { z } from 'zod';
import { NewRunEvent } from '@/lib/schema/new-run-event';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { keepNoted } from './keep-noted';
import { rowsOf } from './rows-of';

/** Keeps events of runs a device has noted: see keepNoted. Each happened when the device kept it. */
export function keepRunEvents(batch: z.infer<typeof Batch>): Promise<Outcome[]> {
  return keepNoted(
    {
      kind: 'runEvent',
      name: 'event',
      schema: NewRunEvent,
      async complete(transaction, event) {
        const run = await rowsOf(transaction, 'run').one(event.runId);
        if (run === undefined) return { code: 'no-such-run', at: 'runId' };
        return { ...event, jobId: run.jobId, at: new Date(event.deviceTime).toISOString() };
      },
    },
    batch,
  );
}
