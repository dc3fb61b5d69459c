'use client';

import { useRef, useState, type FormEvent } from 'react';
import { entryMeaning } from '@/lib/rules/entry-meaning';
import { keypadText } from '@/lib/rules/keypad-text';
import { slipOf } from '@/lib/rules/slip';
import type { Standing } from '@/lib/rules/standing';
import { echoWords, questionWords } from '@/lib/text/bench-entry';
import { mendedDoubtWords } from '@/lib/text/bench-slip';
import { entryErrorWords } from '@/lib/text/bench-entry-error';
import { shownLength } from '@/lib/text/shown-size';
import type { LengthMeaning } from '@/lib/units/parse-length';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import { Keypad, type KeypadKey } from './keypad';
import styles from './list.module.css';
import type { Bench } from './use-bench';
import { plainCorrection } from './use-fresh';
import { useMedia } from './use-media';
import { useMemory } from './use-memory';
import { useSteady } from './use-steady';

type Props = { bench: Bench; reading: Standing; personId: string | null; onDone: () => void };

/** What a reading should have read. What was typed first stays in the book beside it. */
export function MistypedForm({ bench, reading, personId, onDone }: Props) {
  const { chosen, feature, view, fresh } = bench;
  const [soft] = useMemory('soft-keyboard');
  const isTouch = useMedia('(pointer: coarse)');
  const hasOwnKeys = isTouch && soft !== 'on';
  const form = useRef<HTMLFormElement>(null);
  const [text, setText] = useState('');
  const [error, setError] = useState<string | undefined>(undefined);
  /** A text that looked like a slip when it was said. */
  const [doubted, setDoubted] = useState<string | null>(null);
  const read = entryMeaning(text, {
    decimal: chosen.decimal,
    unit: reading.unit,
    nominalPm: feature.nominalPm,
    kind: feature.kind,
  });
  const asked =
    read.kind === 'question' ? questionWords(text, read.code, read.meanings, chosen) : null;
  const gauge = view.sheet.gauges.find(({ id }) => id === reading.gaugeId);
  const keep = (meaning: LengthMeaning) => {
    const resolutionPm = meaning.resolutionPm ?? gauge?.resolutionPm ?? reading.resolutionPm;
    const slip =
      gauge === undefined
        ? null
        : slipOf(
            { text, valuePm: meaning.sizePm, resolutionPm },
            bench.slipFacts(gauge, { text, unit: meaning.unit }, reading.id),
          );
    // Asked once: who says the same again means it.
    if (slip !== null && doubted !== text) {
      setDoubted(text);
      setError(
        mendedDoubtWords(
          text,
          slip.insteadPm === null ? null : shownLength(slip.insteadPm, resolutionPm, chosen),
        ),
      );
      return;
    }
    fresh.correction({
      ...plainCorrection,
      kind: 'mistyped',
      readingId: reading.id,
      personId,
      text,
      unit: meaning.unit,
      valuePm: meaning.sizePm,
      resolutionPm,
    });
    onDone();
  };
  const write = (typed: string) => {
    setText(typed);
    setError(undefined);
  };
  const press = useSteady((key: KeypadKey) => {
    if (key === 'log') form.current?.requestSubmit();
    else write(keypadText(text, key));
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (read.kind === 'length' && text.length <= 64) keep(read.meaning);
    else if (read.kind !== 'question') {
      const fault =
        read.kind === 'error'
          ? read
          : {
              code: read.kind === 'empty' ? ('empty' as const) : ('no-digits' as const),
              character: '',
            };
      setError(entryErrorWords(text, fault));
    }
  };
  return (
    <form ref={form} className={styles.form} onSubmit={submit}>
      <Field
        bench
        label={`It reads, instead of ${reading.text.trim()}`}
        hint={
          read.kind === 'length'
            ? echoWords(text, read.meaning, chosen)
            : reading.unit === 'mm'
              ? 'mm'
              : 'inches'
        }
        value={text}
        error={error}
        inputMode={hasOwnKeys ? 'none' : 'decimal'}
        // oxlint-disable-next-line jsx-a11y/no-autofocus -- it was just asked for
        autoFocus
        onChange={(event) => write(event.target.value)}
      />
      {asked === null || read.kind !== 'question' ? (
        !hasOwnKeys && (
          <Button kind="main" bench type="submit">
            It reads this
          </Button>
        )
      ) : (
        <>
          <p className={styles.says}>{asked.title}</p>
          <div className={styles.pair}>
            {asked.answers.map((label, index) => (
              <Button key={label} bench onClick={() => keep(read.meanings[index]!)}>
                {label}
              </Button>
            ))}
          </div>
        </>
      )}
      {hasOwnKeys && <Keypad decimal={chosen.decimal} onKey={press} />}
    </form>
  );
}
