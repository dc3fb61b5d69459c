'use client';

import { useState, type FormEvent } from 'react';
import type { FitRule } from '@/lib/schema/fit-rule';
import { readRule } from '@/lib/rules/ways/read-rule';
import type { Shown } from '@/lib/text/shown-size';
import { ruleFaultWords, slopeUnit } from '@/lib/text/ways-words';
import { ruleText } from '../fit-ways/said-of-fit';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import type { OwnForm } from './own-table';
import styles from './tables.module.css';

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
  const fields = [
    ['fixed', 'Constant', `${shown.unit}; empty: none`],
    ['min', 'Least slope', slopeUnit(shown.unit)],
    ['aim', 'Aimed slope', slopeUnit(shown.unit)],
    ['max', 'Most slope', slopeUnit(shown.unit)],
  ] as const;
  return (
    <form className={styles.form} noValidate onSubmit={(event) => void keep(event)}>
      <Field
        label="Rule"
        value={text.name}
        maxLength={120}
        onChange={(event) => setText({ ...text, name: event.target.value })}
        error={tried && text.name.trim() === '' ? 'A rule needs a name.' : undefined}
      />
      {fields.map(([key, label, hint]) => (
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
      <div className={styles.acts}>
        <Button kind="main" type="submit" disabled={busy}>
          Keep this rule
        </Button>
        <Button onClick={onLeave}>Leave it</Button>
      </div>
    </form>
  );

  async function keep(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (text.name.trim() === '' || read.kind !== 'rule') return;
    await onKeep({ ...read.rule, name: text.name.trim(), note: text.note.trim() });
  }
}
