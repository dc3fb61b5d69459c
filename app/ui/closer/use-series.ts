'use client';

import { useEffect, useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { followJob } from '@/lib/outbox/browser-live';
import { ProblemError } from '@/lib/outbox/problem-error';
import type { Change } from '@/lib/schema/change';
import type { RunSeriesAnswer } from '@/lib/schema/run-series';
import { problemWords } from '@/lib/text/problem-words';

/** What moves a size of a run. */
const moving: ReadonlySet<Change['thing']> = new Set([
  'reading',
  'correction',
  'cut',
  'piece',
  'gauge',
]);
/** What changes the events and the limits it is drawn with. */
const heading: ReadonlySet<Change['thing']> = new Set(['run', 'runEvent', 'feature']);
/** Readings that come in a burst are fetched together. */
const gatherMs = 250;
/** After a failure it is asked again so soon. */
const againMs = 3000;

/**
 * The columns of a run, fetched once and again whenever something of its job moves a size. `onHead` is called
 * when its events or its limits have changed.
 */
export function useSeries(
  runId: string,
  jobId: string,
  onHead: () => void,
): { series: RunSeriesAnswer | null; trouble: string | null } {
  const [series, setSeries] = useState<RunSeriesAnswer | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let stop: (() => void) | undefined;
    const soon = (ms: number) =>
      setTimeout(() => {
        timer = undefined;
        void load();
      }, ms);
    const load = async (): Promise<void> => {
      try {
        const got = await browserApi().send<RunSeriesAnswer>('GET', `/api/v1/runs/${runId}/series`);
        if (gone) return;
        setTrouble(null);
        setSeries(got);
        stop ??= followJob({
          jobId,
          after: got.seq,
          onChange({ thing }) {
            if (heading.has(thing)) onHead();
            if (!moving.has(thing)) return;
            // Not begun anew at each: readings that never rest are shown all the same.
            timer ??= soon(gatherMs);
          },
        });
      } catch (error) {
        if (gone) return;
        setTrouble(problemWords(error instanceof ProblemError ? error : null));
        timer ??= soon(againMs);
      }
    };
    void load();
    return () => {
      gone = true;
      clearTimeout(timer);
      stop?.();
    };
  }, [runId, jobId, onHead]);
  return { series, trouble };
}
