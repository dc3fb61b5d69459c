'use client';

import { useState, type FormEvent } from 'react';
import type { FitRule } from '@/lib/schema/fit-rule';
import { uuidv7 } from '@/lib/outbox/ids';
import { readRule } from '@/lib/rules/ways/read-rule';
import { starterRules } from '@/lib/rules/ways/starter-rules';
import type { Shown } from '@/lib/text/shown-size';
import {
  practiceWords,
  ruleFaultWords,
  ruleWords,
  slopeRangeWords,
  slopeUnit,
  tightCareWords,
} from '@/lib/text/ways-words';
import { ruleText } from '../fit-ways/said-of-fit';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import { Panel } from '../primitives/panel';
import styles from './tables.module.css';
import { useShopThings } from './use-shop-things';

type Props = { own: readonly FitRule[]; shown: Shown };

/** Rules of practice: the shop's own, to change and strike out, and those to start from. */
export function RulesPanel({ own, shown }: Props) {
  const [open, setOpen] = useState<string | null>(null);
  const { make, change, trouble, busy } = useShopThings('fit-rules');
  const live = own.filter(({ struckAt }) => struckAt === null);
  const struck = own.filter(({ struckAt }) => struckAt !== null);
  const asked = live.find(({ id }) => id === open);
  return (
    <Panel title="Rules of practice" note="clearance = constant + slope × diameter">
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      {open === null ? (
        <Button onClick={() => setOpen('new')}>Add a rule of your own</Button>
      ) : (
        <RuleForm
          key={open}
          rule={asked ?? null}
          shown={shown}
          busy={busy}
          onLeave={() => setOpen(null)}
          onKeep={async (fields) => {
            const done =
              asked === undefined
                ? await make({ id: uuidv7(), ...fields })
                : await change(asked.id, { version: asked.version, ...fields });
            if (done) setOpen(null);
          }}
        />
      )}
      <ul className={styles.rows} aria-label="Rules of practice">
        {live.map((row) => (
          <li key={row.id}>
            <span className={styles.name}>{row.name}</span>
            <span className={styles.figure}>{ruleWords(row, shown)}</span>
            <span className={styles.range}>{slopeRangeWords(row, shown)}</span>
            <span className={styles.remark}>
              {['your own', row.note].filter(Boolean).join('; ')}
            </span>
            <span className={styles.acts}>
              <Button disabled={busy} onClick={() => setOpen(row.id)}>
                Change<span className="unseen"> {row.name}</span>
              </Button>
              <Button
                disabled={busy}
                onClick={() => void change(row.id, { version: row.version, struck: true })}
              >
                Strike out<span className="unseen"> {row.name}</span>
              </Button>
            </span>
          </li>
        ))}
        {starterRules.map((row) => (
          <li key={row.key}>
            <span className={styles.name}>{row.name}</span>
            <span className={styles.figure}>{ruleWords(row, shown)}</span>
            <span className={styles.range}>{slopeRangeWords(row, shown)}</span>
            <span className={styles.remark}>
              {row.note}; {practiceWords}
            </span>
          </li>
        ))}
        {struck.map((row) => (
          <li key={row.id}>
            <span className={`${styles.name} struck`}>{row.name}</span>
            <span className={styles.figure}>{ruleWords(row, shown)}</span>
            <span className={styles.range}>struck out</span>
            <span className={styles.remark}>{row.note}</span>
            <span className={styles.acts}>
              <Button
                disabled={busy}
                onClick={() => void change(row.id, { version: row.version, struck: false })}
              >
                Put back<span className="unseen"> {row.name}</span>
              </Button>
            </span>
          </li>
        ))}
      </ul>
      <p className={styles.care}>{tightCareWords(-1)}</p>
    </Panel>
  );
}

type FormProps = {
  rule: FitRule | null;
  shown: Shown;
  busy: boolean;
  onKeep: (fields: Record<string, unknown>) => Promise<void>;
  onLeave: () => void;
};

function RuleForm({ rule, shown, busy, onKeep, onLeave }: FormProps) {
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
