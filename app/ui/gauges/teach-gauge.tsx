'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { ProblemError } from '@/lib/outbox/problem-error';
import type { TaughtSends } from '@/lib/rules/teach-gauge';
import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import type { Gauge, GaugeSends } from '@/lib/schema/gauge';
import { sendsWords } from '@/lib/text/gauge-sends-words';
import { problemWords } from '@/lib/text/problem-words';
import { remember } from '../bench/device-memory';
import { useHasSerial } from '../bench/use-has-serial';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Panel } from '../primitives/panel';
import { LessonView } from './lesson-view';
import { TeachPort, type ChosenPort } from './teach-port';
import styles from './teach-gauge.module.css';
import { useLesson } from './use-lesson';
import { useTeachKeys } from './use-teach-keys';

type Props = { gauge: Gauge; onDone: () => void };

/** Teaches how a gauge sends: three readings of it, what was understood, and one press to keep it. */
export default function TeachGauge({ gauge, onDone }: Props) {
  const router = useRouter();
  const hasSerial = useHasSerial();
  const [way, setWay] = useState<'keys' | 'port'>(gauge.serialBaud === null ? 'keys' : 'port');
  const [port, setPort] = useState<ChosenPort | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const { lesson, hear, again } = useLesson(gauge);
  const known = sendsWords(gauge.name, gauge);
  const byPort = hasSerial && way === 'port';

  return (
    <Panel title={`How ${gauge.name} sends`}>
      <div className={styles.teach}>
        {known === null ? null : <p className={styles.says}>As taught before: {known}</p>}
        {hasSerial ? (
          <Choice
            label="It sends"
            value={way}
            onChange={(next) => {
              again();
              setWay(next);
            }}
            options={[
              { value: 'keys', label: 'as a keyboard' },
              { value: 'port', label: 'by a serial port' },
            ]}
          />
        ) : null}
        {byPort ? (
          <TeachPort gauge={gauge} onHeard={hear} onSpoilt={again} onChosen={setPort} />
        ) : lesson.kind === 'waiting' ? (
          <TeachBox onHeard={hear} />
        ) : null}
        {byPort && port === null ? null : (
          <LessonView
            key={lesson.kind}
            name={gauge.name}
            lesson={lesson}
            busy={busy}
            onKeep={(sends) => void keep(sends)}
            onAgain={again}
          />
        )}
        {trouble === null ? null : (
          <p role="alert" className={styles.trouble}>
            {trouble}
          </p>
        )}
        <div className={styles.buttons}>
          <Button onClick={onDone}>Leave it</Button>
          {known === null ? null : (
            <Button disabled={busy} onClick={() => void send(untaughtGauge)}>
              Forget what was taught
            </Button>
          )}
        </div>
      </div>
    </Panel>
  );

  async function keep(sends: TaughtSends) {
    const serial =
      byPort && port !== null
        ? { serialBaud: port.settings.baudRate, serialFrame: port.settings.frame }
        : { serialBaud: null, serialFrame: null };
    if (byPort && port !== null) remember(`port:${gauge.id}`, port.make);
    await send({ ...sends, ...serial });
  }

  async function send(sends: GaugeSends) {
    setBusy(true);
    setTrouble(null);
    try {
      const body = { version: gauge.version, ...sends };
      await browserApi().send<Gauge>('PATCH', `/api/v1/gauges/${gauge.id}`, body);
      onDone();
      router.refresh();
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
      setBusy(false);
    }
  }
}

/** Where the focus waits while a gauge types; what is typed anywhere on the page is heard too. */
function TeachBox({ onHeard }: { onHeard: ReturnType<typeof useLesson>['hear'] }) {
  const box = useRef<HTMLInputElement>(null);
  useTeachKeys(box, (arrival) => onHeard([arrival]));
  return (
    <label className={styles.box}>
      <span>Send three readings</span>
      <input
        ref={box}
        type="text"
        inputMode="none"
        autoComplete="off"
        autoCorrect="off"
        autoCapitalize="off"
        spellCheck={false}
        placeholder="waiting for the gauge"
      />
    </label>
  );
}
