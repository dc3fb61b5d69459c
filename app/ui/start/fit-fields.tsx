'use client';

import type { DraftJob } from '@/lib/rules/draft-job';
import type { WantedClearance } from '@/lib/rules/parse-clearance';
import { lengthWords } from '@/lib/text/length-words';
import { Choice } from '../primitives/choice';
import { Field } from '../primitives/field';
import styles from './start.module.css';

type DraftFit = NonNullable<DraftJob['fit']>;

type Props = {
  title: string;
  fit: DraftFit;
  unit: 'mm' | 'in';
  wrong: Extract<WantedClearance, { kind: 'wrong' }> | null;
  onChange: (over: Partial<DraftFit>) => void;
};

/** How freely one part is to run in the other; left empty, there is no fit yet. */
export function FitFields({ title, fit, unit, wrong, onChange }: Props) {
  const fields = [
    ['min', 'Least clearance', `${unit}; a minus is interference`],
    ['max', 'Most clearance', unit],
    ['aim', 'Aim', 'empty: the middle'],
  ] as const;
  return (
    <section className={styles.part} aria-label="The fit">
      <h2>{title}</h2>
      <div className={styles.fit}>
        {fields.map(([key, label, hint]) => (
          <Field
            key={key}
            label={label}
            hint={hint}
            inputMode="decimal"
            value={fit[key]}
            onChange={(event) => onChange({ [key]: event.target.value })}
            error={wrong?.field === key ? lengthWords(wrong.problem, fit[key]) : undefined}
          />
        ))}
        <Choice
          label="What governs"
          value={fit.governs}
          onChange={(governs) => onChange({ governs })}
          options={[
            { value: 'extreme', label: 'Smallest bore, largest shaft' },
            { value: 'mean', label: 'Mean sizes' },
          ]}
        />
      </div>
    </section>
  );
}
