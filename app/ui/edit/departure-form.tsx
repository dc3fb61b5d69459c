'use client';

import { useState } from 'react';
import type { Departure } from '@/lib/schema/run';
import { uuidv7 } from '@/lib/outbox/ids';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Field, SelectField } from '../primitives/field';
import { KeptForm } from './kept-form';

type Props = { departure: Departure | null; onDone: () => void };

/** What was made other than drawn: what, instead of what, why, and what else it touches. */
export function DepartureForm({ departure, onDone }: Props) {
  const { view } = useJob();
  const { make, change, trouble, busy } = useThings();
  const [draft, setDraft] = useState({
    made: departure?.made ?? '',
    drawn: departure?.drawn ?? '',
    why: departure?.why ?? '',
    touches: departure?.touches ?? '',
    partId: departure?.partId ?? '',
  });
  const [tried, setTried] = useState(false);
  const edit = (over: Partial<typeof draft>) => setDraft((old) => ({ ...old, ...over }));
  const needs = (text: string, sentence: string) =>
    tried && text.trim() === '' ? sentence : undefined;
  return (
    <KeptForm
      busy={busy}
      trouble={trouble}
      onKeep={() => void keep()}
      onStrike={departure === null ? undefined : () => void strike(departure)}
    >
      <Field
        label="Made"
        hint="what it is"
        value={draft.made}
        maxLength={120}
        onChange={(event) => edit({ made: event.target.value })}
        error={needs(draft.made, 'Say what was made.')}
      />
      <Field
        label="Drawn"
        hint="what the drawing asks for"
        value={draft.drawn}
        maxLength={120}
        onChange={(event) => edit({ drawn: event.target.value })}
        error={needs(draft.drawn, 'Say what was drawn.')}
      />
      <Field
        label="Why"
        value={draft.why}
        maxLength={120}
        onChange={(event) => edit({ why: event.target.value })}
      />
      <Field
        label="Touches"
        hint="what else it changes"
        value={draft.touches}
        maxLength={120}
        onChange={(event) => edit({ touches: event.target.value })}
      />
      <SelectField
        label="Part"
        value={draft.partId}
        onChange={(partId) => edit({ partId })}
        options={[
          { value: '', label: 'the whole job' },
          ...view.parts.map(({ part }) => ({ value: part.id, label: part.name })),
        ]}
      />
    </KeptForm>
  );

  async function keep() {
    setTried(true);
    if (draft.made.trim() === '' || draft.drawn.trim() === '') return;
    const body = { ...draft, partId: draft.partId === '' ? null : draft.partId };
    const done =
      departure === null
        ? await make('departure', {
            id: uuidv7(),
            jobId: view.sheet.job.id,
            number: Math.max(0, ...view.sheet.departures.map(({ number }) => number)) + 1,
            ...body,
          })
        : await change('departure', departure.id, { version: departure.version, ...body });
    if (done) onDone();
  }

  async function strike({ id, version }: Departure) {
    if (await change('departure', id, { version, struck: true })) onDone();
  }
}
