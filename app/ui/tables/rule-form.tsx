'use client';

import { useState } from 'react';
import type { FitRule } from '@/lib/schema/fit-rule';
import { readRule } from '@/lib/rules/ways/read-rule';
import type { Shown } from '@/lib/text/shown-size';
import { ruleFaultWords, ruleFieldWords } from '@/lib/text/ways-words';
import { ruleText } from '../fit-ways/said-of-fit';
import { Field } from '../primitives/field';
import { OwnFormFrame } from './own-form-frame';
import type { OwnForm } from './own-table';

type Props = OwnForm<FitRule> & { shown: Shown };

/** A rule of practice of the shop's own: name, constant, slopes, and what it is for. */
export function RuleForm({ row: rule, shown, busy, onKeep, onLeave }: Props) {
  const [text, setText] = useState(() => ({
    name: rule?.name ?? '',
    note: rule?.note ?? '',
    ...(rule === null ? { fixed: '', min: '', aim: '', max: '' } : ruleText(rule, shown)),
  }));
  const [tried, setTried] = useState(false);
  const read = readRule(text, shown);
  return (
    <OwnFormFrame keep="Keep this rule" busy={busy} onSubmit={keep} onLeave={onLeave}>
      <Field
        label="Rule"
        value={text.name}
        maxLength={120}
        onChange={(event) => setText({ ...text, name: event.target.value })}
        error={tried && text.name.trim() === '' ? 'A rule needs a name.' : undefined}
      />
      {ruleFieldWords(shown.unit).map(([key, label, hint]) => (
        <Field
          key={key}
          label={label}
          hint={hint}
          value={text[key]}
          onChange={(event) => setText({ ...text, [key]: event.target.value })}
          error={
            tried && read.kind === 'wrong' && read.field === key
              ? ruleFaultWords(read.problem, text[key])
              : undefined
          }
        />
      ))}
      <Field
        label="What it is for"
        value={text.note}
        maxLength={120}
        onChange={(event) => setText({ ...text, note: event.target.value })}
      />
    </OwnFormFrame>
  );

  async function keep() {
    setTried(true);
    if (text.name.trim() === '' || read.kind !== 'rule') return;
    await onKeep({ ...read.rule, name: text.name.trim(), note: text.note.trim() });
  }
}
