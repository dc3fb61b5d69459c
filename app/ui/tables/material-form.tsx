'use client';

import { useState } from 'react';
import type { Material } from '@/lib/schema/material';
import { readMaterial } from '@/lib/rules/heat/read-material';
import { expansionFigure } from '@/lib/text/heat-words';
import { materialFaultWords } from '@/lib/text/material-fault-words';
import type { DecimalMark } from '@/lib/units/picometres';
import { Field } from '../primitives/field';
import { OwnFormFrame } from './own-form-frame';
import type { OwnForm } from './own-table';

type Props = OwnForm<Material> & { decimal: DecimalMark };

/** A material of the shop's own: name, coefficient, between what, and who says so. */
export function MaterialForm({ row: material, decimal, busy, onKeep, onLeave }: Props) {
  const figure = (nano: number | undefined) =>
    nano === undefined ? '' : expansionFigure(nano, { decimal });
  const [text, setText] = useState({
    name: material?.name ?? '',
    expansion: figure(material?.expansionNanoPerC),
    low: figure(material?.lowNanoPerC),
    high: figure(material?.highNanoPerC),
    source: material?.source ?? '',
  });
  const [tried, setTried] = useState(false);
  const read = readMaterial(text, decimal);
  const fields = [
    ['name', 'Material', ''],
    ['expansion', 'Grows by', 'millionths a degree C'],
    ['low', 'At least', 'empty: the same'],
    ['high', 'At most', 'empty: the same'],
    ['source', 'Who says so', 'book, mill, own measurement'],
  ] as const;
  return (
    <OwnFormFrame keep="Keep this material" busy={busy} onSubmit={keep} onLeave={onLeave}>
      {fields.map(([key, label, hint]) => (
        <Field
          key={key}
          label={label}
          hint={hint === '' ? undefined : hint}
          value={text[key]}
          maxLength={120}
          onChange={(event) => setText({ ...text, [key]: event.target.value })}
          error={
            tried && read.kind === 'wrong' && read.field === key
              ? materialFaultWords(read.problem, text[key])
              : undefined
          }
        />
      ))}
    </OwnFormFrame>
  );

  async function keep() {
    setTried(true);
    if (read.kind === 'material') await onKeep(read.fields);
  }
}
