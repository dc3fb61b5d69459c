'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { ProblemError } from '@/lib/outbox/problem-error';
import { problemWords } from '@/lib/text/problem-words';
import { Button } from '../primitives/button';

/** Loads the example and opens it; loading it twice is loading it once. */
export function ExampleDoor() {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  return (
    <>
      <Button disabled={busy} onClick={() => void open()}>
        {busy ? 'Loading the example' : 'Open the example'}
      </Button>
      {trouble !== null && <p role="alert">{trouble}</p>}
    </>
  );

  async function open() {
    setBusy(true);
    setTrouble(null);
    try {
      const { jobId } = await browserApi().send<{ jobId: string }>('POST', '/api/v1/example', {});
      router.push(`/jobs/${jobId}/board`);
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
      setBusy(false);
    }
  }
}
