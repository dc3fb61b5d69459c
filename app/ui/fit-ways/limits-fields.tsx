'use client';

import { useMemo } from 'react';
import { parseClearance } from '@/lib/rules/parse-clearance';
import { nearFits } from '@/lib/rules/ways/near-fits';
import { lengthWords } from '@/lib/text/length-words';
import { nearPairWords } from '@/lib/text/ways-words';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import type { WayProps } from './fit-way-fields';
import styles from './fit-ways.module.css';

/** Least, most and aim as figures; the standard pairs that come nearest are offered below. */
export function LimitsFields({ said, borePm, shown, wrong, onChange }: WayProps) {
  const { limits } = said;
  const near = useMemo(() => {
    const read = parseClearance({ ...limits, aim: '' }, shown);
    return read.kind === 'wanted' ? nearFits(read, borePm) : [];
  }, [limits, borePm, shown]);
  const fields = [
    ['min', 'Least clearance', `${shown.unit}; a minus is interference`],
    ['max', 'Most clearance', shown.unit],
    ['aim', 'Aim', 'empty: the middle'],
  ] as const;
  return (
    <>
      <div className={styles.three}>
        {fields.map(([key, label, hint]) => (
          <Field
            key={key}
            label={label}
            hint={hint}
            inputMode="decimal"
            value={limits[key]}
            onChange={(event) => onChange({ limits: { ...limits, [key]: event.target.value } })}
            error={
              wrong?.way === 'limits' && wrong.field === key
                ? lengthWords(wrong.problem, limits[key])
                : undefined
            }
          />
        ))}
      </div>
      {near.length > 0 && (
        <div className={styles.near}>
          <span className={styles.label}>Nearest classes</span>
          {near.map((pair) => (
            <Button
              key={pair.text}
              onClick={() => onChange({ way: 'classes', classes: pair.text, classesAim: '' })}
            >
              {nearPairWords(pair, shown)}
            </Button>
          ))}
        </div>
      )}
    </>
  );
}
