'use client';

import type { MatchedMaterial } from '@/lib/rules/heat/material-of';
import { materialsKnown } from '@/lib/rules/heat/material-of';
import type { Part } from '@/lib/schema/part';
import { materialMatchWords } from '@/lib/text/heat-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { SelectField } from '../primitives/field';
import styles from './hot-cold.module.css';

type Props = { part: Part; match: MatchedMaterial | null };

/** What one side is made of, how its name was understood, and the list to choose another from. */
export function SideMaterial({ part, match }: Props) {
  const { view, chosen } = useJob();
  const { change, trouble, busy } = useThings();
  const known = materialsKnown(view.sheet.materials);
  const named = known.find(({ name }) => name === part.material)?.key ?? '';
  return (
    <div className={styles.side}>
      <SelectField
        label={`Material of ${part.name.toLowerCase()}`}
        disabled={busy}
        value={named}
        options={[
          { value: '', label: part.material === '' ? 'not said' : `as written: ${part.material}` },
          ...known.map(({ key, name }) => ({ value: key, label: name })),
        ]}
        onChange={(key) => {
          const material = known.find((one) => one.key === key)?.name;
          if (material !== undefined) {
            void change('part', part.id, { version: part.version, material });
          }
        }}
      />
      <p className={match === null ? styles.decide : styles.remark}>
        {materialMatchWords(part.material, match, chosen)}
      </p>
      {match !== null && (
        <p className={styles.source}>
          {[match.material.over, match.material.source].filter(Boolean).join('. ')}
        </p>
      )}
      {trouble !== null && (
        <p role="alert" className={styles.decide}>
          {trouble}
        </p>
      )}
    </div>
  );
}
