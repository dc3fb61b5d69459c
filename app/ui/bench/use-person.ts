'use client';

import { useEffect, useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import { ProblemError } from '@/lib/outbox/problem-error';
import type { Setting } from '@/lib/schema/setting';
import { problemWords } from '@/lib/text/problem-words';
import { useJob } from '../job/job-provider';

export type Person = {
  id: string | null;
  name: string | null;
  people: readonly { id: string; name: string }[];
  choose: (id: string | null) => void;
  trouble: string | null;
};

/** Who measures on this device. It holds from the tap on; the notebook is told as soon as it answers. */
export function usePerson(): Person {
  const { view, chosen } = useJob();
  const [here, setHere] = useState<{ id: string | null } | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = here === null ? chosen.personId : here.id;
  const people = view.sheet.people.filter(({ struckAt }) => struckAt === null);

  useEffect(() => browserApi().setPerson(id), [id]);

  async function tell(personId: string | null): Promise<void> {
    setTrouble(null);
    try {
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
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
    }
  }

  return {
    id,
    name: people.find((person) => person.id === id)?.name ?? null,
    people,
    choose(personId) {
      setHere({ id: personId });
      void tell(personId);
    },
    trouble,
  };
}
