'use client';

import { useRouter } from 'next/navigation';
import { useMemo, useState, type FormEvent } from 'react';
import { draftJob, tiedFeatures, type DraftFault, type DraftJob } from '@/lib/rules/draft-job';
import { readDrawn } from '@/lib/rules/drawn-feature';
import { fitName } from '@/lib/rules/fit-name';
import { isSaid, nothingSaid } from '@/lib/rules/ways/read-wanted';
import type { FitRule } from '@/lib/schema/fit-rule';
import type { Material } from '@/lib/schema/material';
import type { DecimalMark } from '@/lib/units/picometres';
import { browserApi } from '@/lib/outbox/browser-api';
import { uuidv7 } from '@/lib/outbox/ids';
import { ProblemError } from '@/lib/outbox/problem-error';
import { problemWords } from '@/lib/text/problem-words';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field } from '../primitives/field';
import { emptyPart } from './empty-part';
import { FitFields } from './fit-fields';
import { PartFields } from './part-fields';
import styles from './start.module.css';

type Props = {
  decimal: DecimalMark;
  unit: 'mm' | 'in' | null;
  /** The shop's own. */
  materials: readonly Material[];
  rules: readonly FitRule[];
};

/** Writes a job down from a drawing: its parts, their sizes as drawn, and the fit between two of them. */
export function StartSheet({ decimal, unit, materials, rules }: Props) {
  const router = useRouter();
  const [draft, setDraft] = useState<DraftJob>(() => ({
    name: '',
    drawing: '',
    revision: '',
    unit: unit ?? 'mm',
    parts: [emptyPart(uuidv7), emptyPart(uuidv7)],
    fit: nothingSaid(),
  }));
  const [fault, setFault] = useState<DraftFault | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const change = (over: Partial<DraftJob>) => {
    setFault(null);
    setDraft((old) => ({ ...old, ...over }));
  };
  const tied = tiedFeatures(readFeatures());
  const shown = useMemo(() => ({ unit: draft.unit, decimal }), [draft.unit, decimal]);
  return (
    <form className={styles.form} onSubmit={(event) => void start(event)} noValidate>
      <h1>Start a job</h1>
      <div className={styles.job}>
        <Field
          label="Job"
          value={draft.name}
          onChange={(event) => change({ name: event.target.value })}
          error={fault?.at === 'name' ? 'A job needs a name.' : undefined}
          maxLength={120}
          autoFocus
        />
        <Field
          label="Drawing"
          hint="if it has a number"
          value={draft.drawing}
          onChange={(event) => change({ drawing: event.target.value })}
          maxLength={120}
        />
        <Field
          label="Revision"
          value={draft.revision}
          onChange={(event) => change({ revision: event.target.value })}
          maxLength={120}
        />
        <Choice
          label="Drawn in"
          value={draft.unit}
          onChange={(value) => change({ unit: value })}
          options={[
            { value: 'mm', label: 'Millimetres' },
            { value: 'in', label: 'Inches' },
          ]}
        />
      </div>
      {fault?.at === 'parts' && (
        <p role="alert" className={styles.trouble}>
          A job needs at least one part.
        </p>
      )}
      {draft.parts.map((part, index) => (
        <PartFields
          key={part.key}
          number={index + 1}
          part={part}
          earlier={draft.parts.slice(0, index)}
          unit={draft.unit}
          decimal={decimal}
          fault={fault}
          materials={materials}
          onChange={(over) =>
            change({ parts: draft.parts.map((one) => (one === part ? { ...one, ...over } : one)) })
          }
          onDrop={
            draft.parts.length > 1
              ? () => change({ parts: draft.parts.filter((one) => one !== part) })
              : null
          }
        />
      ))}
      <Button onClick={() => change({ parts: [...draft.parts, emptyPart(uuidv7)] })}>
        Another part
      </Button>
      {tied !== null && draft.fit !== null && (
        <FitFields
          title={fitName(tied.external.name || 'The outside', tied.internal.name || 'the bore')}
          said={draft.fit}
          borePm={tied.internal.nominalPm}
          shaftPm={tied.external.nominalPm}
          shown={shown}
          rules={rules}
          wrong={fault?.at === 'fit' ? fault.wrong : null}
          onChange={(over) => change({ fit: { ...draft.fit!, ...over } })}
        />
      )}
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      <Button kind="main" type="submit" disabled={busy}>
        Start the job
      </Button>
      <p className={styles.remark}>
        More parts, features and fits can be added later; nothing here is final.
      </p>
    </form>
  );

  /** The features that can be read so far, to see whether two of them go together. */
  function readFeatures() {
    return draft.parts.flatMap((part) =>
      part.features.flatMap((feature) => {
        if (feature.drawn.trim() === '') return [];
        const read = readDrawn(feature.drawn, { decimal, unit: draft.unit });
        if (read.kind !== 'feature') return [];
        const { likely, nominalPm } = read;
        return [{ kind: feature.kind ?? likely, partId: part.key, name: part.name, nominalPm }];
      }),
    );
  }

  /** The fit, unless nothing was said of it. */
  function wantedFit(): DraftJob['fit'] {
    const { fit } = draft;
    return fit === null || !isSaid(fit) ? null : fit;
  }

  async function start(event: FormEvent) {
    event.preventDefault();
    const made = draftJob({ ...draft, fit: wantedFit() }, decimal, uuidv7);
    if (made.kind === 'fault') return setFault(made.fault);
    setBusy(true);
    setTrouble(null);
    try {
      await browserApi().send('POST', '/api/v1/jobs/start', made.start);
      router.push(`/jobs/${made.start.job.id}/board`);
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
      setBusy(false);
    }
  }
}
