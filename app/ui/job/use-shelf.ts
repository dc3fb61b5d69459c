'use client';

import { useEffect, useRef } from 'react';
import type { JobSheet } from '@/lib/schema/sheet';
import type { Chosen } from './job-provider';

/** A copy is put down soon after opening and then now and then; what this device entered is in its outbox anyway. */
const firstMs = 3000;
const everyMs = 15_000;

/** Keeps a copy of the open job on this device, for when the notebook cannot be reached. It never fails aloud. */
export function useShelf(sheet: JobSheet, chosen: Chosen): void {
  const latest = useRef({ sheet, chosen });
  const put = useRef<JobSheet | null>(null);
  const jobId = sheet.job.id;
  useEffect(() => {
    latest.current = { sheet, chosen };
  });
  useEffect(() => {
    const keep = async () => {
      const { sheet: now, chosen: choice } = latest.current;
      if (put.current === now) return;
      put.current = now;
      const { unit, decimal, hand, personId } = choice;
      const theme = document.documentElement.dataset['theme'] ?? null;
      const { browserShelf } = await import('@/lib/shelf/browser-shelf');
      await browserShelf().put({
        jobId,
        sheet: now,
        chosen: { unit, decimal, hand, personId, theme },
      });
    };
    const tryKeep = () => {
      keep().catch(() => {
        put.current = null;
      });
    };
    const first = setTimeout(tryKeep, firstMs);
    const timer = setInterval(tryKeep, everyMs);
    const onHidden = () => {
      if (document.visibilityState === 'hidden') tryKeep();
    };
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      clearTimeout(first);
      clearInterval(timer);
      document.removeEventListener('visibilitychange', onHidden);
    };
  }, [jobId]);
}
