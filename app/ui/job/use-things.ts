'use client';

import { useCallback, useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { ProblemError } from '@/lib/outbox/problem-error';
import type { ThingKind } from '@/lib/schema/change';
import { problemWords } from '@/lib/text/problem-words';
import { useJob } from './job-provider';

type Row = Record<string, unknown> & { id: string };

/** Where each kind of thing lives under /api/v1. */
const addresses: Record<Exclude<ThingKind, 'setting' | 'person'>, string> = {
  job: 'jobs',
  part: 'parts',
  piece: 'pieces',
  feature: 'features',
  gauge: 'gauges',
  fit: 'fits',
  pair: 'pairs',
  cut: 'cuts',
  run: 'runs',
  runEvent: 'run-events',
  departure: 'departures',
  picture: 'pictures',
  material: 'materials',
  fitRule: 'fit-rules',
};

/**
 * Makes and changes things of this job through the API. What the answer brings is on every sheet at
 * once; what goes wrong comes back as a sentence, and nothing typed is lost by it.
 */
export function useThings() {
  const { apply } = useJob();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  const run = useCallback(
    async (kind: keyof typeof addresses, send: () => Promise<Row>): Promise<boolean> => {
      setBusy(true);
      setTrouble(null);
      try {
        apply(kind, await send());
        return true;
      } catch (error) {
        if (error instanceof ProblemError && isRow(error.current)) apply(kind, error.current);
        setTrouble(problemWords(error instanceof ProblemError ? error : null));
        return false;
      } finally {
        setBusy(false);
      }
    },
    [apply],
  );

  const make = useCallback(
    (kind: keyof typeof addresses, body: Row) =>
      run(kind, () => browserApi().send<Row>('POST', `/api/v1/${addresses[kind]}`, body)),
    [run],
  );
  const change = useCallback(
    (
      kind: keyof typeof addresses,
      id: string,
      body: { version: number } & Record<string, unknown>,
    ) => run(kind, () => browserApi().send<Row>('PATCH', `/api/v1/${addresses[kind]}/${id}`, body)),
    [run],
  );
  return { make, change, trouble, busy };
}

function isRow(value: unknown): value is Row {
  return typeof value === 'object' && value !== null && 'id' in value;
}
