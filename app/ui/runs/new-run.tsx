'use client';

import Link from 'next/link';
import { useState } from 'react';
import { uuidv7 } from '@/lib/outbox/ids';
import { plainRunChoices } from '@/lib/rules/run-choices';
import { isOnDiameter } from '@/lib/schema/feature-kinds';
import { noMoreRunsWords } from '@/lib/text/run-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { SelectField } from '../primitives/field';
import { DialFields, type Dial } from './dial-fields';
import { readDivision } from './read-division';
import styles from './runs.module.css';

/** The schema takes no more. */
const mostAlike = 11;

/** Starts a run: of which feature, with which alike, and what the machine's dial counts. */
export function NewRun({ onMade }: { onMade?: (id: string) => void }) {
  const { view, chosen } = useJob();
  const { make, trouble, busy } = useThings();
  const options = view.parts.flatMap(({ part, features }) =>
    features
      .filter(({ id }) => !view.runs.some((run) => run.features.some((one) => one.id === id)))
      .map((feature) => ({
        value: feature.id,
        label: `${part.name}, ${feature.name.toLowerCase()}`,
      })),
  );
  const [picked, setFeatureId] = useState('');
  const featureId = (options.find(({ value }) => value === picked) ?? options[0])?.value ?? '';
  const [alikeIds, setAlikeIds] = useState<string[]>([]);
  const kind = view.sheet.features.find(({ id }) => id === featureId)?.kind ?? 'outside';
  const [dial, setDial] = useState<Dial>('radius');
  const [division, setDivision] = useState(chosen.unit === 'mm' ? `0${chosen.decimal}01` : '.001');
  const [error, setError] = useState<string>();
  if (options.length === 0) {
    const isEmpty = view.parts.every(({ features }) => features.length === 0);
    return (
      <p className="t-sentence">
        {noMoreRunsWords(isEmpty)}{' '}
        {isEmpty && <Link href={`/jobs/${view.sheet.job.id}/edit`}>Add the first one</Link>}
      </p>
    );
  }
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <SelectField label="Feature" options={options} value={featureId} onChange={setFeatureId} />
      {options.length > 1 && (
        <fieldset className={styles.rules}>
          <legend>Made the same way: charted together, each from its own nominal</legend>
          {options
            .filter(({ value }) => value !== featureId)
            .map(({ value, label }) => (
              <label key={value}>
                <input
                  type="checkbox"
                  checked={alikeIds.includes(value)}
                  disabled={!alikeIds.includes(value) && alikeIds.length >= mostAlike}
                  onChange={(event) =>
                    setAlikeIds((ids) =>
                      event.target.checked ? [...ids, value] : ids.filter((id) => id !== value),
                    )
                  }
                />
                {label}
              </label>
            ))}
        </fieldset>
      )}
      <DialFields
        kind={kind}
        dial={dial}
        onDial={setDial}
        division={division}
        onDivision={setDivision}
        error={error}
      />
      <Button kind="main" type="submit" disabled={busy}>
        Start the run
      </Button>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </form>
  );

  async function keep() {
    const read = readDivision(division, chosen);
    if (typeof read === 'string') return setError(read);
    setError(undefined);
    const id = uuidv7();
    const made = await make('run', {
      id,
      jobId: view.sheet.job.id,
      featureId,
      dial: isOnDiameter(kind) ? dial : 'diameter',
      divisionPm: read.pm,
      ...plainRunChoices,
      alikeIds: alikeIds.filter((alike) => alike !== featureId),
    });
    if (made) onMade?.(id);
  }
}
