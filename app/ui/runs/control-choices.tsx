'use client';

import { useState } from 'react';
import type { RunView } from '@/lib/rules/run-view';
import type { ControlKind, PatternRule, Run } from '@/lib/schema/run';
import { controlNames, patternNames } from '@/lib/text/control-words';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field, SelectField } from '../primitives/field';
import { ChartSettingsForm } from './chart-settings-form';
import styles from './runs.module.css';

const rules = Object.keys(patternNames) as PatternRule[];
const kinds = Object.keys(controlNames) as ControlKind[];

/** How a run is charted: kept with the run, for everybody. Switches act at once, figures with a button. */
export function ControlChoices({ run }: { run: RunView }) {
  const { change, trouble, busy } = useThings();
  const { run: kept } = run;
  const markAt = (turn: number | null) =>
    turn === null ? '' : (run.pieces.find(({ ordinal }) => ordinal === turn)?.mark ?? '');
  const [together, setTogether] = useState(String(kept.together));
  const [from, setFrom] = useState(markAt(kept.baseFrom));
  const [to, setTo] = useState(markAt(kept.baseTo));
  const [errors, setErrors] = useState<{ together?: string; from?: string; to?: string }>({});
  const put = (fields: Partial<Run>) =>
    void change('run', kept.id, { version: kept.version, ...fields });
  const isGrouped = kept.together > 1;
  return (
    <div className={styles.choices}>
      <SelectField
        label="Chart"
        value={kept.control}
        disabled={busy}
        onChange={(value) => put({ control: value as ControlKind })}
        options={kinds.map((value) => ({ value, label: controlNames[value] }))}
      />
      <ChartSettingsForm run={kept} disabled={busy} put={put} />
      <form
        className={styles.figures}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          keepFigures();
        }}
      >
        <Field
          label="Taken at a time"
          hint="1 to 25"
          inputMode="numeric"
          value={together}
          onChange={(event) => setTogether(event.target.value)}
          error={errors.together}
        />
        <Field
          label="Limits from piece"
          hint="empty: the first"
          value={from}
          onChange={(event) => setFrom(event.target.value)}
          error={errors.from}
        />
        <Field
          label="to piece"
          hint="empty: the last"
          value={to}
          onChange={(event) => setTo(event.target.value)}
          error={errors.to}
        />
        <Button type="submit" disabled={busy}>
          Use these
        </Button>
      </form>
      {isGrouped && (
        <Choice<Run['groupOf']>
          label="A group is"
          value={kept.groupOf}
          disabled={busy}
          onChange={(groupOf) => put({ groupOf })}
          options={[
            { value: 'pieces', label: 'Pieces in a row' },
            { value: 'readings', label: 'Readings of a piece' },
          ]}
        />
      )}
      <Choice<Run['follow']>
        label="Limits"
        value={kept.follow}
        disabled={busy}
        onChange={(follow) => put({ follow })}
        options={[
          { value: 'flat', label: 'Flat' },
          { value: 'line', label: 'Follow the drift line' },
        ]}
      />
      <fieldset className={styles.rules} disabled={busy}>
        <legend>Pattern rules, ISO 7870-2. Each more is more false alarms.</legend>
        {rules.map((rule) => (
          <label key={rule}>
            <input
              type="checkbox"
              checked={kept.patterns.includes(rule)}
              onChange={(event) =>
                put({
                  patterns: rules.filter((one) =>
                    one === rule ? event.target.checked : kept.patterns.includes(one),
                  ),
                })
              }
            />
            {patternNames[rule]}
          </label>
        ))}
      </fieldset>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </div>
  );

  function keepFigures() {
    const count = Number(together.trim());
    const isCount = Number.isInteger(count) && count >= 1 && count <= 25;
    const [baseFrom, baseTo] = [turnOf(from), turnOf(to)];
    const wrong = {
      ...(isCount ? {} : { together: 'A whole number from 1 to 25.' }),
      ...(baseFrom === undefined ? { from: `No piece is called ${from.trim()}.` } : {}),
      ...(baseTo === undefined
        ? { to: `No piece is called ${to.trim()}.` }
        : baseTo !== null && (baseFrom ?? 1) > baseTo
          ? { to: 'It comes before the first.' }
          : {}),
    };
    setErrors(wrong);
    if (Object.keys(wrong).length > 0) return;
    put({ together: count, baseFrom: baseFrom ?? null, baseTo: baseTo ?? null });
  }

  /** The turn of a mark; null for none typed, undefined where no piece has it. */
  function turnOf(mark: string): number | null | undefined {
    const wanted = mark.trim().toLowerCase();
    if (wanted === '') return null;
    return run.pieces.find((place) => place.mark.toLowerCase() === wanted)?.ordinal;
  }
}
