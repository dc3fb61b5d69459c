'use client';

import {
  nameOfKind,
  usualPlaces,
  type DraftFault,
  type DraftFeature,
  type Places,
} from '@/lib/rules/draft-job';
import { readDrawn } from '@/lib/rules/drawn-feature';
import { featureKinds, type FeatureKind } from '@/lib/schema/feature-kinds';
import type { DecimalMark } from '@/lib/units/picometres';
import { drawnEchoWords, drawnFaultWords } from '@/lib/text/draft-words';
import { Field, SelectField } from '../primitives/field';
import styles from './start.module.css';

type Props = {
  feature: DraftFeature;
  unit: 'mm' | 'in';
  decimal: DecimalMark;
  fault: DraftFault | null;
  onChange: (over: Partial<DraftFeature>) => void;
};

/** One line of the drawing, with how it will be read beside it. */
export function FeatureFields({ feature, unit, decimal, fault, onChange }: Props) {
  const read = feature.drawn.trim() === '' ? null : readDrawn(feature.drawn, { decimal, unit });
  const kind = feature.kind ?? (read?.kind === 'feature' ? read.likely : 'bore');
  const asked = fault?.at === 'drawn' && fault.feature === feature.key;
  const error =
    read !== null && read.kind !== 'feature' && (asked || read.kind !== 'error')
      ? drawnFaultWords(read, feature.drawn)
      : undefined;
  return (
    <div className={styles.feature}>
      <Field
        label="As drawn"
        hint={
          read?.kind === 'feature'
            ? drawnEchoWords(read, { unit, decimal })
            : '18.000 +0.018 0, or 18 H7'
        }
        value={feature.drawn}
        onChange={(event) => onChange({ drawn: event.target.value })}
        error={error}
        maxLength={120}
      />
      <SelectField
        label="It is a"
        value={kind}
        onChange={(value) =>
          onChange({
            kind: value as FeatureKind,
            places: usualPlaces(value as FeatureKind),
          })
        }
        options={featureKinds.map((value) => ({ value, label: nameOfKind(value) }))}
      />
      <Field
        label="Called"
        value={feature.name}
        placeholder={nameOfKind(kind)}
        onChange={(event) => onChange({ name: event.target.value })}
        maxLength={120}
      />
      <SelectField
        label="Read at"
        value={feature.places ?? usualPlaces(kind)}
        onChange={(value) => onChange({ places: value as Places })}
        options={[
          { value: 'along', label: 'three places, across A and B' },
          { value: 'across', label: 'one place, across A and B' },
          { value: 'one', label: 'one place' },
        ]}
      />
    </div>
  );
}
