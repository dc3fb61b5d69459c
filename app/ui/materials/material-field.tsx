'use client';

import { useId } from 'react';
import type { Material } from '@/lib/schema/material';
import { materialOf, materialsKnown } from '@/lib/rules/heat/material-of';
import { expansionFigure } from '@/lib/text/heat-words';
import type { DecimalMark } from '@/lib/units/picometres';
import { Field } from '../primitives/field';

type Props = {
  value: string;
  /** The shop's own materials. */
  own: readonly Material[];
  decimal: DecimalMark;
  onChange: (value: string) => void;
};

/** What a part is made of: free text, with the materials that are known offered, and how it is understood. */
export function MaterialField({ value, own, decimal, onChange }: Props) {
  const listId = useId();
  const match = materialOf(value, own);
  const hint =
    match === null
      ? value.trim() === ''
        ? undefined
        : 'its expansion is not known'
      : `${match.material.name}, ${expansionFigure(match.material.expansionNanoPerC, { decimal })}`;
  return (
    <>
      <Field
        label="Material"
        {...(hint === undefined ? {} : { hint })}
        list={listId}
        value={value}
        maxLength={120}
        onChange={(event) => onChange(event.target.value)}
      />
      <datalist id={listId}>
        {materialsKnown(own).map(({ key, name }) => (
          <option key={key} value={name} />
        ))}
      </datalist>
    </>
  );
}
