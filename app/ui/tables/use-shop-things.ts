'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { ProblemError } from '@/lib/outbox/problem-error';
import { problemWords } from '@/lib/text/problem-words';

/** Makes and changes things of the shop; the sheet is read anew, and what goes wrong comes back as a sentence. */
export function useShopThings(address: 'materials' | 'fit-rules') {
  const router = useRouter();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  async function run(send: () => Promise<unknown>): Promise<boolean> {
    setBusy(true);
    setTrouble(null);
    try {
      await send();
      return true;
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
      return false;
    } finally {
      setBusy(false);
      router.refresh();
    }
  }

  return {
    make: (body: { id: string } & Record<string, unknown>) =>
      run(() => browserApi().send('POST', `/api/v1/${address}`, body)),
    change: (id: string, body: { version: number } & Record<string, unknown>) =>
      run(() => browserApi().send('PATCH', `/api/v1/${address}/${id}`, body)),
    trouble,
    busy,
  };
}
