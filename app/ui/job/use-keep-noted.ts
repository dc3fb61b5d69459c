'use client';

import { useState } from 'react';
import type { Draft } from '@/lib/outbox/entry';
import { useJob } from './job-provider';

/**
 * Keeps what is noted at the machine on this device, with or without a network. It is seen at once; where the
 * disk would not take it, `keepNoted` is false and `trouble` says so in the words given.
 */
export function useKeepNoted(troubleWords: string) {
  const { keep } = useJob();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const keepNoted = async (draft: Draft): Promise<boolean> => {
    setBusy(true);
    setTrouble(null);
    try {
      await keep(draft);
      return true;
    } catch {
      setTrouble(troubleWords);
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { keepNoted, trouble, busy };
}
