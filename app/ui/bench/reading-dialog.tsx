'use client';

import { useState } from 'react';
import type { Place } from '@/lib/rules/entry-plan';
import { isSamePlace } from '@/lib/rules/entry-plan';
import type { Standing } from '@/lib/rules/standing';
import { placeWords } from '@/lib/text/bench-place';
import { slipAnswers } from '@/lib/text/bench-slip';
import { standingWords } from '@/lib/text/bench-standing';
import { readAtWords } from '@/lib/text/read-at';
import { shownLength } from '@/lib/text/shown-size';
import { Button } from '../primitives/button';
import { BenchDialog } from './bench-dialog';
import styles from './list.module.css';
import { MistypedForm } from './mistyped-form';
import { MoveForm } from './move-form';
import type { Bench } from './use-bench';
import { SlipReasons } from './slip-reasons';
import { plainCorrection } from './use-fresh';

type Props = {
  bench: Bench;
  place: Place;
  /** Opened to say what a reading should have read. */
  mistypedId?: string;
  personId: string | null;
  onClose: () => void;
};

/** What was read at one place, and all that can be said of it. Nothing is rubbed out by any of it. */
export function ReadingDialog({ bench, place, mistypedId, personId, onClose }: Props) {
  const { cell, piece, feature, chosen, fresh, view } = bench;
  const here = cell.readings.filter(
    (reading) => isSamePlace(reading, place) && (bench.blind === null || reading.id === mistypedId),
  );
  const [pickedId, setPickedId] = useState(mistypedId ?? here.at(-1)?.id);
  const [form, setForm] = useState<'mistyped' | 'move' | 'keep' | null>(
    mistypedId === undefined ? null : 'mistyped',
  );
  const picked = here.find(({ id }) => id === pickedId);
  const where = placeWords(place, feature);
  const say = (kind: 'void' | 'restore' | 'count', reason = '') => {
    if (picked === undefined) return;
    fresh.correction({ ...plainCorrection, kind, reason, readingId: picked.id, personId });
    onClose();
  };
  const [now] = useState(() => new Date());
  const receivedAt = (id: string) =>
    view.sheet.readings.find((row) => row.id === id)?.receivedAt ?? null;
  const figure = (reading: Standing) => shownLength(reading.valuePm, reading.resolutionPm, chosen);
  return (
    <BenchDialog
      title={`${piece.mark} ${feature.name.toLowerCase()}${where === '' ? '' : `, ${where}`}`}
      onClose={onClose}
    >
      <ul className={styles.list} aria-label="Readings here">
        {here.map((reading) => (
          <li key={reading.id}>
            <button
              type="button"
              className={styles.row}
              aria-pressed={reading.id === pickedId}
              onClick={() => setPickedId(reading.id)}
            >
              <span className={`${styles.name} ${styles[reading.state] ?? ''}`}>
                {figure(reading)}
              </span>
              <span className={styles.note}>
                {standingWords({
                  state: reading.state,
                  heldAs: reading.heldAs,
                  reason: reading.reason,
                  typed: reading.text,
                  firstTyped: reading.firstText,
                  gauge: view.sheet.gauges.find(({ id }) => id === reading.gaugeId)?.name ?? '',
                  time: readAtWords(reading.deviceTime, receivedAt(reading.id), now),
                })}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {picked === undefined ? null : (
        <section className={styles.section} aria-label={`What to do with ${figure(picked)}`}>
          <div className={styles.pair}>
            <Button
              bench
              onClick={() => {
                bench.pick(place);
                onClose();
              }}
            >
              Measure here again
            </Button>
            {picked.state === 'struck' ? (
              <Button bench onClick={() => say('restore')}>
                Put back
              </Button>
            ) : (
              <Button bench onClick={() => say('void')}>
                Strike it out
              </Button>
            )}
            {picked.state === 'held' ? (
              <Button bench aria-expanded={form === 'keep'} onClick={() => setForm('keep')}>
                {slipAnswers.right}
              </Button>
            ) : null}
            <Button bench aria-expanded={form === 'mistyped'} onClick={() => setForm('mistyped')}>
              I mistyped
            </Button>
            <Button bench aria-expanded={form === 'move'} onClick={() => setForm('move')}>
              It belongs elsewhere
            </Button>
          </div>
          {form === 'mistyped' ? (
            <MistypedForm
              key={picked.id}
              bench={bench}
              reading={picked}
              personId={personId}
              onDone={onClose}
            />
          ) : null}
          {form === 'keep' ? (
            <SlipReasons onKeep={(reason) => say('count', reason)} onBack={() => setForm(null)} />
          ) : null}
          {form === 'move' ? (
            <MoveForm
              key={picked.id}
              bench={bench}
              reading={picked}
              personId={personId}
              onDone={onClose}
            />
          ) : null}
        </section>
      )}
    </BenchDialog>
  );
}
