'use client';

import { likelyPrefix, type DraftFault, type DraftPart } from '@/lib/rules/draft-job';
import type { Material } from '@/lib/schema/material';
import { uuidv7 } from '@/lib/outbox/ids';
import type { DecimalMark } from '@/lib/units/picometres';
import { Button } from '../primitives/button';
import { MaterialField } from '../materials/material-field';
import { Field } from '../primitives/field';
import { emptyFeature } from './empty-part';
import { FeatureFields } from './feature-fields';
import styles from './start.module.css';

type Props = {
  number: number;
  part: DraftPart;
  /** The parts before it, whose marks are taken. */
  earlier: readonly DraftPart[];
  unit: 'mm' | 'in';
  decimal: DecimalMark;
  fault: DraftFault | null;
  /** The shop's own materials. */
  materials: readonly Material[];
  onChange: (over: Partial<DraftPart>) => void;
  onDrop: (() => void) | null;
};

/** One part of the drawing: name, how many, and a line for each feature. */
export function PartFields(props: Props) {
  const { number, part, earlier, fault, onChange, onDrop } = props;
  const own = (at: DraftFault['at']) =>
    fault !== null && fault.at === at && 'part' in fault && fault.part === part.key;
  const taken = earlier.map((one, index) => ({
    prefix: one.prefix || likelyPrefix(one.name, earlier.slice(0, index)),
  }));
  const prefix = part.prefix || likelyPrefix(part.name, taken);
  const count = Number(part.quantity);
  const marks =
    prefix === '' || !(count >= 1)
      ? 'marks its pieces'
      : count === 1
        ? `${prefix}1`
        : `${prefix}1 to ${prefix}${count}`;
  return (
    <section className={styles.part} aria-label={part.name || `Part ${number}`}>
      <h2>{part.name || `Part ${number}`}</h2>
      <div className={styles.partRow}>
        <Field
          label="Part"
          value={part.name}
          onChange={(event) => onChange({ name: event.target.value })}
          error={own('part name') ? 'This part needs a name.' : undefined}
          maxLength={120}
        />
        <Field
          label="How many"
          inputMode="numeric"
          value={part.quantity}
          onChange={(event) => onChange({ quantity: event.target.value })}
          error={own('quantity') ? 'A whole number from 1 to 2000.' : undefined}
        />
        <Field
          label="Mark"
          hint={marks}
          value={part.prefix}
          placeholder={likelyPrefix(part.name, taken)}
          onChange={(event) => onChange({ prefix: event.target.value })}
          error={own('prefix') ? 'At most six letters or figures.' : undefined}
          maxLength={6}
        />
        <MaterialField
          value={part.material}
          own={props.materials}
          decimal={props.decimal}
          onChange={(material) => onChange({ material })}
        />
      </div>
      {part.features.map((feature) => (
        <FeatureFields
          key={feature.key}
          {...props}
          feature={feature}
          onChange={(over) =>
            onChange({
              features: part.features.map((one) => (one === feature ? { ...one, ...over } : one)),
            })
          }
        />
      ))}
      <div className={styles.buttons}>
        <Button onClick={() => onChange({ features: [...part.features, emptyFeature(uuidv7)] })}>
          Another feature
        </Button>
        {onDrop !== null && <Button onClick={onDrop}>Leave this part out</Button>}
      </div>
    </section>
  );
}
