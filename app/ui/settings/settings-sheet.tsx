'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useRef, useState, type FormEvent } from 'react';
import type { Person } from '@/lib/schema/gauge';
import type { Setting } from '@/lib/schema/setting';
import { browserApi } from '@/lib/outbox/browser-api';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import { uuidv7 } from '@/lib/outbox/ids';
import { ProblemError } from '@/lib/outbox/problem-error';
import { problemWords } from '@/lib/text/problem-words';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field } from '../primitives/field';
import { Panel } from '../primitives/panel';
import { DeviceChoices } from '../bench/device-choices';
import styles from './settings.module.css';

type Props = { shop: Setting | null; device: Setting | null; people: readonly Person[] };

const nothing = { decimal: null, unitShown: null, theme: null, hand: null, personId: null };

/** What this device shows and takes, and who measures on it. Each choice is kept as it is made. */
export function SettingsSheet({ shop, device, people }: Props) {
  const router = useRouter();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [name, setName] = useState('');
  /** As the notebook has it by now, and what is on its way there: a choice builds on the one before it. */
  const told = useRef(device);
  const telling = useRef(Promise.resolve());
  const live = people.filter((person) => person.struckAt === null);
  const decimal = device?.decimal ?? shop?.decimal ?? '.';
  return (
    <>
      <h1>Settings</h1>
      <div className={styles.panels}>
        <Panel title="This device">
          <div className={styles.choices}>
            <Choice
              label="Light"
              value={device?.theme ?? 'machine'}
              onChange={(theme) => void choose({ theme: theme === 'machine' ? null : theme })}
              options={[
                { value: 'machine', label: 'As the machine' },
                { value: 'light', label: 'Light' },
                { value: 'dark', label: 'Dark' },
                { value: 'glare', label: 'Glare' },
              ]}
            />
            <Choice
              label="Decimal mark"
              value={decimal}
              onChange={(mark) => void choose({ decimal: mark })}
              options={[
                { value: '.', label: 'Point, 18.004' },
                { value: ',', label: 'Comma, 18,004' },
              ]}
            />
            <Choice
              label="Sizes shown in"
              value={device?.unitShown ?? 'job'}
              onChange={(unit) => void choose({ unitShown: unit === 'job' ? null : unit })}
              options={[
                { value: 'job', label: 'The unit of the job' },
                { value: 'mm', label: 'Millimetres' },
                { value: 'in', label: 'Inches' },
              ]}
            />
            <Choice
              label="Keypad on the"
              value={device?.hand ?? shop?.hand ?? 'right'}
              onChange={(hand) => void choose({ hand })}
              options={[
                { value: 'right', label: 'Right' },
                { value: 'left', label: 'Left' },
              ]}
            />
          </div>
        </Panel>
        <Panel title="At the Bench, on this device">
          <DeviceChoices />
        </Panel>
        <Panel title="Who measures here">
          {live.length > 0 && (
            <Choice
              label="On this device"
              value={device?.personId ?? 'nobody'}
              onChange={(id) => void choose({ personId: id === 'nobody' ? null : id })}
              options={[
                ...live.map((person) => ({ value: person.id, label: person.name })),
                { value: 'nobody', label: 'Nobody named' },
              ]}
            />
          )}
          <form className={styles.person} onSubmit={(event) => void addPerson(event)}>
            <Field
              label="Another name"
              value={name}
              maxLength={120}
              onChange={(event) => setName(event.target.value)}
            />
            <Button type="submit" disabled={name.trim() === ''}>
              Add
            </Button>
          </form>
        </Panel>
        <Panel title="The notebook">
          <p className="t-sentence">
            Everything is kept in one database on the machine that runs Fitwright. How to copy it
            and bring it back is in its README; what other programs can ask of it is at{' '}
            <Link href="/api">the API page</Link>.
          </p>
        </Panel>
      </div>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </>
  );

  function choose(over: Partial<typeof nothing> | Partial<Setting>): Promise<void> {
    telling.current = telling.current.then(() =>
      tell(async () => {
        const known = newerOf(told.current, device);
        if (known !== null) {
          const change = { version: known.version, ...over };
          told.current = await browserApi().send('PATCH', `/api/v1/settings/${known.id}`, change);
          return;
        }
        const id = await browserOutbox().deviceId();
        const first = { id, ...nothing, ...over };
        told.current = await browserApi().send('POST', '/api/v1/settings', first);
      }),
    );
    return telling.current;
  }

  async function addPerson(event: FormEvent) {
    event.preventDefault();
    const id = uuidv7();
    await tell(async () => {
      await browserApi().send('POST', '/api/v1/people', { id, name: name.trim() });
      setName('');
    });
    await choose({ personId: id });
  }

  async function tell(send: () => Promise<void>) {
    setTrouble(null);
    try {
      await send();
    } catch (error) {
      setTrouble(problemWords(error instanceof ProblemError ? error : null));
    }
    router.refresh();
  }
}

function newerOf(one: Setting | null, other: Setting | null): Setting | null {
  return (one?.version ?? 0) > (other?.version ?? 0) ? one : other;
}
