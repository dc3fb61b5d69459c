'use client';

import { useRouter } from 'next/navigation';
import { useState, type FormEvent } from 'react';
import { gaugeKinds } from '@/lib/schema/gauge-kinds';
import type { Gauge } from '@/lib/schema/gauge';
import {
  draftGauge,
  gaugeDraftOf,
  type GaugeDraft,
  type GaugeFault,
} from '@/lib/rules/draft-gauge';
import type { DecimalMark } from '@/lib/units/picometres';
import { browserApi } from '@/lib/outbox/browser-api';
import { uuidv7 } from '@/lib/outbox/ids';
import { ProblemError } from '@/lib/outbox/problem-error';
import { gaugeFaultWords } from '@/lib/text/gauge-fault-words';
import { problemWords } from '@/lib/text/problem-words';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field, SelectField, TextField } from '../primitives/field';
import { Panel } from '../primitives/panel';
import styles from './gauges.module.css';

type Props = { gauge: Gauge | null; decimal: DecimalMark; onDone: (kept?: Gauge) => void };

/** Writes a gauge down, or changes it. What is not known is left empty and said to be so. */
export function GaugeForm({ gauge, decimal, onDone }: Props) {
  const router = useRouter();
  const [draft, setDraft] = useState<GaugeDraft>(() => gaugeDraftOf(gauge, decimal));
  const [fault, setFault] = useState<GaugeFault | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const change = (over: Partial<GaugeDraft>) => {
    setFault(null);
    setDraft((old) => ({ ...old, ...over }));
  };
  const length = (
    key: 'resolution' | 'uncertainty' | 'rangeLow' | 'rangeHigh',
    label: string,
    hint: string,
  ) => (
    <Field
      label={label}
      hint={hint}
      inputMode="decimal"
      value={draft[key]}
      onChange={(event) => change({ [key]: event.target.value })}
      error={fault?.field === key ? gaugeFaultWords(fault, draft[key]) : undefined}
    />
  );
  return (
    <Panel title={gauge === null ? 'Add a gauge' : gauge.name}>
      <form className={styles.form} onSubmit={(event) => void keep(event)} noValidate>
        <Field
          label="Name"
          hint="as it is called in the shop"
          value={draft.name}
          onChange={(event) => change({ name: event.target.value })}
          error={fault?.field === 'name' ? gaugeFaultWords(fault, '') : undefined}
          maxLength={120}
          autoFocus
        />
        <SelectField
          label="Kind"
          value={draft.kind}
          onChange={(kind) => change({ kind: kind as Gauge['kind'] })}
          options={gaugeKinds.map((kind) => ({
            value: kind,
            label: kind.charAt(0).toUpperCase() + kind.slice(1),
          }))}
        />
        <Choice
          label="Reads in"
          value={draft.unit}
          onChange={(unit) => change({ unit })}
          options={[
            { value: 'mm', label: 'Millimetres' },
            { value: 'in', label: 'Inches' },
          ]}
        />
        {length('resolution', 'Reads to', 'the smallest step it shows')}
        {length('uncertainty', 'Known to, plus and minus', 'empty: not known')}
        {length('rangeLow', 'From', 'empty: not said')}
        {length('rangeHigh', 'To', 'empty: not said')}
        <Field
          label="Last checked on"
          type="date"
          value={draft.checkedOn}
          onChange={(event) => change({ checkedOn: event.target.value })}
        />
        <TextField
          label="Remark"
          value={draft.note}
          maxLength={2000}
          rows={2}
          onChange={(event) => change({ note: event.target.value })}
        />
        {trouble !== null && (
          <p role="alert" className={styles.trouble}>
            {trouble}
          </p>
        )}
        <div className={styles.buttons}>
          <Button kind="main" type="submit" disabled={busy}>
            Keep this gauge
          </Button>
          <Button onClick={() => onDone()}>Leave it</Button>
          {gauge !== null && (
            <Button disabled={busy} onClick={() => void send({ struck: true })}>
              Strike it out
            </Button>
          )}
        </div>
      </form>
    </Panel>
  );

  async function keep(event: FormEvent) {
    event.preventDefault();
    const read = draftGauge(draft, decimal);
    if (read.kind === 'fault') return setFault(read.fault);
    await send(read.gauge);
  }

  async function send(body: Record<string, unknown>) {
    setBusy(true);
    setTrouble(null);
    try {
      const kept =
        gauge === null
          ? await browserApi().send<Gauge>('POST', '/api/v1/gauges', { id: uuidv7(), ...body })
          : await browserApi().send<Gauge>('PATCH', `/api/v1/gauges/${gauge.id}`, {
              version: gauge.version,
              ...body,
            });
      onDone(kept);
      router.refresh();
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
      setBusy(false);
    }
  }
}
