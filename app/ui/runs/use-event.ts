'use client';

import { uuidv7 } from '@/lib/outbox/ids';
import type { RunView } from '@/lib/rules/run-view';
import type { RunEvent, RunEventKind } from '@/lib/schema/run';
import { useThings } from '../job/use-things';

/** What is said of an event besides what it was. */
export type EventSaid = Partial<
  Pick<RunEvent, 'note' | 'offsetPm' | 'offsetDial' | 'afterOrdinal'>
>;

/** Notes events of a run, after its last measured piece unless another is said. */
export function useEvent(run: RunView) {
  const { make, change, trouble, busy } = useThings();
  const note = (kind: RunEventKind, said: EventSaid = {}) =>
    make('runEvent', {
      id: uuidv7(),
      jobId: run.run.jobId,
      runId: run.run.id,
      afterOrdinal: run.points.at(-1)?.ordinal ?? 0,
      kind,
      note: '',
      offsetPm: null,
      offsetDial: null,
      at: new Date().toISOString(),
      ...said,
    });
  return { note, change, trouble, busy };
}
