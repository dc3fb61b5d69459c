'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import { jobIndex } from '../primitives/job-index';

/** Alt and a digit go to the sheet of that number; a digit alone belongs to the entry. */
export function useAltSheets(jobId: string): void {
  const router = useRouter();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!event.altKey || event.ctrlKey || event.metaKey) return;
      const digit = /^(?:Digit|Numpad)(\d)$/.exec(event.code)?.[1];
      const sheet = jobIndex(jobId).find(({ number }) => String(number) === digit);
      if (sheet === undefined) return;
      event.preventDefault();
      router.push(sheet.href);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [jobId, router]);
}
