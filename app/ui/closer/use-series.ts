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
/** Readings that come in a burst are fetched together. */
const gatherMs = 250;

/** The columns of a run, fetched once and again whenever something of its job moves a size. */
export function useSeries(
  runId: string,
  jobId: string,
): { series: RunSeriesAnswer | null; trouble: string | null } {
  const [series, setSeries] = useState<RunSeriesAnswer | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let stop: (() => void) | undefined;
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
            if (!moving.has(thing)) return;
            clearTimeout(timer);
            timer = setTimeout(() => void load(), gatherMs);
          },
        });
      } catch (error) {
        if (!gone) setTrouble(problemWords(error instanceof ProblemError ? error : null));
      }
    };
    void load();
    return () => {
      gone = true;
      clearTimeout(timer);
      stop?.();
    };
  }, [runId, jobId]);
  return { series, trouble };
}
