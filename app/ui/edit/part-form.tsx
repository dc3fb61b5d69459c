'use client';

import { useState } from 'react';
import { likelyPrefix } from '@/lib/rules/draft-job';
import type { Part } from '@/lib/schema/part';
import { uuidv7 } from '@/lib/outbox/ids';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { MaterialField } from '../materials/material-field';
import { Field } from '../primitives/field';
import { KeptForm } from './kept-form';

type Props = { part: Part | null; onDone: () => void };

/** One part: name, how many, mark and material. More wanted makes more pieces; fewer strikes none. */
export function PartForm({ part, onDone }: Props) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const [draft, setDraft] = useState({
    name: part?.name ?? '',
    quantity: String(part?.quantity ?? 1),
    prefix: part?.prefix ?? '',
    material: part?.material ?? '',
  });
  const [tried, setTried] = useState(false);
  const edit = (over: Partial<typeof draft>) => setDraft((old) => ({ ...old, ...over }));
  const quantity = Number(draft.quantity);
  const counts = Number.isInteger(quantity) && quantity >= 1 && quantity <= 2000;
  const likely = likelyPrefix(draft.name, view.sheet.parts);
  return (
    <KeptForm
      busy={busy}
      trouble={trouble}
      onKeep={() => void keep()}
      onStrike={part === null ? undefined : () => void strike(part)}
    >
      <Field
        label="Part"
        value={draft.name}
        maxLength={120}
        onChange={(event) => edit({ name: event.target.value })}
        error={tried && draft.name.trim() === '' ? 'This part needs a name.' : undefined}
      />
      <Field
        label="How many"
        inputMode="numeric"
        value={draft.quantity}
        onChange={(event) => edit({ quantity: event.target.value })}
        error={tried && !counts ? 'A whole number from 1 to 2000.' : undefined}
      />
      <Field
        label="Mark"
        hint="begins the marks of new pieces"
        value={draft.prefix}
        placeholder={likely}
        maxLength={6}
        onChange={(event) => edit({ prefix: event.target.value })}
      />
      <MaterialField
        value={draft.material}
        own={view.sheet.materials}
        decimal={chosen.decimal}
        onChange={(material) => edit({ material })}
      />
    </KeptForm>
  );

  async function keep() {
    setTried(true);
    if (draft.name.trim() === '' || !counts) return;
    const body = { ...draft, quantity, prefix: draft.prefix || likely };
    const done =
      part === null
        ? await make('part', {
            id: uuidv7(),
            jobId: view.sheet.job.id,
            position: Math.max(0, ...view.sheet.parts.map(({ position }) => position)) + 1,
            ...body,
          })
        : await change('part', part.id, { version: part.version, ...body });
    if (done) onDone();
  }

  async function strike({ id, version }: Part) {
    if (await change('part', id, { version, struck: true })) onDone();
  }
}
