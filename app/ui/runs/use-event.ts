'use client';

import { lastTurn } from '@/lib/rules/last-turn';
import type { RunView } from '@/lib/rules/run-view';
import type { RunEvent, RunEventKind } from '@/lib/schema/run';
import { eventTroubleWords } from '@/lib/text/event-words';
import { useJob } from '../job/job-provider';
import { useKeepNoted } from '../job/use-keep-noted';

/** What is said of an event besides what it was. */
export type EventSaid = Partial<
  Pick<RunEvent, 'note' | 'offsetPm' | 'offsetDial' | 'afterOrdinal'>
>;

/**
 * Notes events of a run, after the last turn that was read unless another is said. They are kept on this device
 * like readings, with or without a network; `note` is false where its disk would not take one.
 */
export function useEvent(view: RunView) {
  const { run } = view;
  const { chosen } = useJob();
  const { keepNoted, trouble, busy } = useKeepNoted(eventTroubleWords);
  const note = (kind: RunEventKind, said: EventSaid = {}): Promise<boolean> =>
    keepNoted({
      kind: 'event',
      jobId: run.jobId,
      row: {
        personId: chosen.personId,
        runId: run.id,
        afterOrdinal: lastTurn(view)?.ordinal ?? 0,
        kind,
        note: '',
        offsetPm: null,
        offsetDial: null,
        ...said,
      },
    });
  return { note, trouble, busy };
}
