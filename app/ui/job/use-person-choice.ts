'use client';

import { useCallback, useEffect, useMemo, useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import { ProblemError } from '@/lib/outbox/problem-error';
import type { Setting } from '@/lib/schema/setting';
import { problemWords } from '@/lib/text/problem-words';
import { remember } from '../bench/device-memory';
import { useMemory } from '../bench/use-memory';

/** What the notebook could not be told is told again so often. */
const againMs = 15_000;

export type PersonChoice = {
  personId: string | null;
  choose: (id: string | null) => void;
  trouble: string | null;
};

/**
 * Who measures on this device, on every sheet of a job. It holds from the tap on; while the notebook does not
 * know it the device remembers it, over a reload too, and tells it until it does.
 */
export function usePersonChoice(known: string | null): PersonChoice {
  const [here, setHere] = useState<{ id: string | null } | null>(null);
  const [word] = useMemory('person-untold');
  const [trouble, setTrouble] = useState<string | null>(null);
  const untold = word === null || word === '' ? null : { id: word === nobody ? null : word };
  const personId = (untold ?? here ?? { id: known }).id;
  useEffect(() => browserApi().setPerson(personId), [personId]);

  const isUntold = untold !== null;
  useEffect(() => {
    if (!isUntold) return undefined;
    let gone = false;
    const tell = async () => {
      try {
        await tellNotebook(personId);
        if (gone) return;
        setTrouble(null);
        setHere({ id: personId });
        remember('person-untold', '');
      } catch (error) {
        if (!gone) setTrouble(problemWords(error instanceof ProblemError ? error : null));
      }
    };
    void tell();
    const timer = setInterval(() => void tell(), againMs);
    const online = () => void tell();
    window.addEventListener('online', online);
    return () => {
      gone = true;
      clearInterval(timer);
      window.removeEventListener('online', online);
    };
  }, [isUntold, personId]);

  const choose = useCallback((id: string | null) => {
    setHere({ id });
    remember('person-untold', id ?? nobody);
  }, []);
  return useMemo(() => ({ personId, choose, trouble }), [personId, choose, trouble]);
}

/** Nobody, as a choice that was made. */
const nobody = 'nobody';

async function tellNotebook(personId: string | null): Promise<void> {
  const deviceId = await browserOutbox().deviceId();
  const address = `/api/v1/settings/${deviceId}`;
  const known = await browserApi()
    .send<Setting>('GET', address)
    .catch((error: unknown) => {
      if (error instanceof ProblemError && error.status === 404) return null;
      throw error;
    });
  if (known === null) {
    const nothing = { decimal: null, unitShown: null, theme: null, hand: null };
    await browserApi().send('POST', '/api/v1/settings', { id: deviceId, ...nothing, personId });
  } else {
    await browserApi().send('PATCH', address, { version: known.version, personId });
  }
}
