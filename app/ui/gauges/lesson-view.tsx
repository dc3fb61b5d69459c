'use client';

import { useEffect, useRef, useState } from 'react';
import type { Lesson, TaughtSends } from '@/lib/rules/teach-gauge';
import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import type { UnitRule } from '@/lib/schema/gauge';
import { lessonCameWords, lessonFaultWords, sendsWords } from '@/lib/text/gauge-sends-words';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field } from '../primitives/field';
import styles from './teach-gauge.module.css';

type Props = {
  name: string;
  lesson: Lesson;
  busy: boolean;
  onKeep: (sends: TaughtSends) => void;
  onAgain: () => void;
};

/** How far the lesson is; what three readings were understood as; or that they do not agree. */
export function LessonView({ name, lesson, busy, onKeep, onAgain }: Props) {
  const understood = lesson.kind === 'understood' ? lesson.sends : null;
  const [unit, setUnit] = useState<UnitRule | null>(understood?.sendsUnit ?? null);
  const [pause, setPause] = useState(String(understood?.sendsPauseMs ?? ''));
  const found = useRef<HTMLDivElement>(null);
  // The box that had the focus is gone. No button has it: an end that comes late must press nothing.
  useEffect(() => found.current?.focus(), []);
  if (lesson.kind === 'waiting') {
    return (
      <p className={styles.says} role="status">
        {lessonCameWords(lesson.came)}
      </p>
    );
  }
  if (lesson.kind === 'fault') {
    return (
      <div className={styles.teach} ref={found} tabIndex={-1}>
        <p className={styles.trouble} role="alert">
          {lessonFaultWords(lesson.code, name)}
        </p>
        <Readings texts={lesson.texts} />
        <div className={styles.buttons}>
          <Button kind="main" onClick={onAgain}>
            Send three again
          </Button>
        </div>
      </div>
    );
  }
  const hasPause = lesson.sends.sendsPauseMs !== null;
  const pauseMs = Number(pause);
  const isPause = Number.isInteger(pauseMs) && pauseMs >= 50 && pauseMs <= 500;
  const sends: TaughtSends = {
    ...lesson.sends,
    sendsUnit: unit,
    sendsPauseMs: hasPause ? (isPause ? pauseMs : lesson.sends.sendsPauseMs) : null,
  };
  const isFixed = unit === 'mm' || unit === 'in';
  return (
    <div className={styles.teach} ref={found} tabIndex={-1}>
      <p className={styles.says} role="status">
        {sendsWords(name, { ...untaughtGauge, ...sends })}
      </p>
      <Readings
        texts={lesson.readings.map(({ text, unit: read }) =>
          lesson.sends.sendsUnit === 'says' ? text : `${text} ${isFixed ? unit : read}`,
        )}
      />
      <Choice
        label="A figure without a unit is in"
        value={unit}
        onChange={setUnit}
        options={[
          { value: 'mm', label: 'mm, always' },
          { value: 'in', label: 'inches, always' },
          { value: 'button', label: 'as its button stands', hint: 'checked by size' },
          ...(lesson.sends.sendsUnit === 'says'
            ? [{ value: 'says' as const, label: 'it says so itself' }]
            : []),
        ]}
      />
      {hasPause ? (
        <Field
          label="Silence that ends a reading"
          hint="50 to 500 ms"
          inputMode="numeric"
          value={pause}
          onChange={(event) => setPause(event.target.value)}
          error={isPause ? undefined : 'From 50 to 500, whole milliseconds.'}
        />
      ) : null}
      <div className={styles.buttons}>
        <Button kind="main" disabled={busy || (hasPause && !isPause)} onClick={() => onKeep(sends)}>
          Keep this
        </Button>
        <Button onClick={onAgain}>Send three again</Button>
      </div>
    </div>
  );
}

function Readings({ texts }: { texts: readonly string[] }) {
  return (
    <ol className={styles.readings} aria-label="As they were read">
      {texts.map((text, n) => (
        <li key={n}>{text}</li>
      ))}
    </ol>
  );
}
