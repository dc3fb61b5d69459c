'use client';

import { useState } from 'react';
import { lastTurn } from '@/lib/rules/last-turn';
import type { RunView } from '@/lib/rules/run-view';
import { isOnDiameter } from '@/lib/schema/feature-kinds';
import type { RunEvent, RunEventKind } from '@/lib/schema/run';
import { eventKinds, eventWords } from '@/lib/text/event-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field, SelectField } from '../primitives/field';
import type { Dial } from './dial-fields';
import styles from './events.module.css';
import { movedField } from './moved-field';
import { useEvent } from './use-event';

type Props = {
  run: RunView;
  /** The event to put right; a new one where it is left out. */
  event?: RunEvent;
  kind?: RunEventKind;
  onDone: () => void;
};

/** Everything about an event: what, after which piece, how far an offset was moved and on which dial. */
export function EventForm({ run, event, kind: firstKind = 'insert changed', onDone }: Props) {
  const { chosen } = useJob();
  const { note, trouble: notKept, busy: keeping } = useEvent(run);
  const { change, trouble: refused, busy: changing } = useThings();
  const trouble = notKept ?? refused;
  const [kind, setKind] = useState<RunEventKind>(event?.kind ?? firstKind);
  const [after, setAfter] = useState(markAt(run, event?.afterOrdinal));
  const [remark, setRemark] = useState(event?.note ?? '');
  const firstDial = event?.offsetDial ?? run.run.dial;
  const [dial, setDial] = useState<Dial>(firstDial);
  const [moved, setMoved] = useState(movedField.text(event, firstDial, chosen));
  const [errors, setErrors] = useState<{ after?: string; moved?: string }>({});
  return (
    <form
      className={styles.form}
      noValidate
      aria-label={event === undefined ? 'New event' : 'Event put right'}
      onSubmit={(submitted) => {
        submitted.preventDefault();
        void keep();
      }}
    >
      <SelectField
        label="What happened"
        value={kind}
        onChange={(value) => setKind(value as RunEventKind)}
        options={eventKinds.map((value) => ({
          value,
          label: eventWords({ kind: value, note: '', at: '' }).title,
        }))}
      />
      {kind === 'offset moved' && (
        <>
          {isOnDiameter(run.feature.kind) && (
            <Choice<Dial>
              label="Put in on the dial of"
              value={dial}
              onChange={setDial}
              options={[
                { value: 'radius', label: 'Radius' },
                { value: 'diameter', label: 'Diameter' },
              ]}
            />
          )}
          <Field
            label="Moved by, on that dial"
            hint={`${chosen.unit}; a minus is smaller`}
            value={moved}
            inputMode="text"
            onChange={(typed) => setMoved(typed.target.value)}
            error={errors.moved}
          />
        </>
      )}
      <Field
        label="After piece"
        hint="empty: before the first"
        value={after}
        onChange={(typed) => setAfter(typed.target.value)}
        error={errors.after}
      />
      <Field
        label="Remark"
        value={remark}
        maxLength={120}
        onChange={(typed) => setRemark(typed.target.value)}
      />
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      <div className={styles.buttons}>
        <Button kind="main" type="submit" disabled={keeping || changing}>
          Keep it
        </Button>
        <Button onClick={onDone}>Leave it</Button>
      </div>
    </form>
  );

  async function keep() {
    const afterOrdinal = turnOf(run, after);
    if (afterOrdinal === null) return setErrors({ after: `No piece is called ${after.trim()}.` });
    const offset = kind === 'offset moved' ? readMoved() : null;
    if (offset === undefined) return;
    setErrors({});
    const said = {
      note: remark.trim(),
      offsetPm: offset,
      offsetDial: offset === null ? null : dial,
      afterOrdinal,
    };
    const done =
      event === undefined
        ? await note(kind, said)
        : await change('runEvent', event.id, { version: event.version, kind, ...said });
    if (done) onDone();
  }

  /** On diameter, pm; undefined: the field says why. */
  function readMoved(): number | null | undefined {
    const was = event === undefined ? undefined : { event, dial: firstDial };
    const read = movedField.read(moved, dial, chosen, was);
    if (typeof read !== 'string') return read.pm;
    setErrors({ moved: read });
    return undefined;
  }
}

function markAt(run: RunView, ordinal: number | undefined): string {
  if (ordinal === undefined) return lastTurn(run)?.mark ?? '';
  return run.pieces.find((place) => place.ordinal === ordinal)?.mark ?? '';
}

/** The turn of a mark; 0 for none typed, null where no piece has it. */
function turnOf(run: RunView, mark: string): number | null {
  const wanted = mark.trim().toLowerCase();
  if (wanted === '') return 0;
  return run.pieces.find((place) => place.mark.toLowerCase() === wanted)?.ordinal ?? null;
}
