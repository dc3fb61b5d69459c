'use client';

import Link from 'next/link';
import { useState } from 'react';
import { entryNext } from '@/lib/rules/entry-next';
import { jobIndex } from '../primitives/sheet-head';
import { Choice } from '../primitives/choice';
import { BenchDialog } from './bench-dialog';
import { GaugeList } from './gauge-list';
import styles from './list.module.css';
import { useMemory } from './use-memory';
import type { Bench } from './use-bench';
import type { Person } from './use-person';

type Props = { bench: Bench; person: Person; onClose: () => void; onListKeys: () => void };

/** Another piece, feature, gauge or person: plain lists, one tap each. */
export function ChooseDialog({ bench, person, onClose, onListKeys }: Props) {
  const { view, piece, feature, where, part: here } = bench;
  const [partId, setPartId] = useState(here.id);
  const part = view.parts.find((one) => one.part.id === partId) ?? view.parts[0]!;
  const others = view.parts.filter(
    (one) => one.part.id !== part.part.id && one.features.length > 0,
  );
  const shownFeature = part.features.find(({ id }) => id === feature.id) ?? part.features[0];
  const go = (pieceId: string, featureId: string) => {
    where.goTo({ pieceId, featureId });
    onClose();
  };
  return (
    <BenchDialog title="On the bench" onClose={onClose}>
      <section className={styles.section}>
        <h3>{part.part.name}</h3>
        <ul className={styles.marks} aria-label="Pieces">
          {part.pieces.map((one) => (
            <li key={one.id}>
              <button
                type="button"
                className={styles.mark}
                aria-pressed={one.id === piece.id}
                data-done={shownFeature !== undefined && isTaken(bench, one.id, shownFeature.id)}
                onClick={() => shownFeature !== undefined && go(one.id, shownFeature.id)}
              >
                {one.mark}
              </button>
            </li>
          ))}
        </ul>
        <p className={styles.says}>Light: every place of it has a reading.</p>
      </section>
      {partId === here.id ? (
        <section className={styles.section}>
          <h3>Feature</h3>
          <ul className={styles.list} aria-label="Features">
            {part.features.map((one) => (
              <li key={one.id}>
                <button
                  type="button"
                  className={styles.row}
                  aria-pressed={one.id === feature.id}
                  onClick={() => go(piece.id, one.id)}
                >
                  <span className={styles.name}>
                    {one.balloon} {one.name}
                  </span>
                  <span className={styles.note}>{one.asDrawn}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {others.length === 0 ? null : (
        <section className={styles.section}>
          <h3>Another part</h3>
          <ul className={styles.list} aria-label="Parts">
            {others.map((one) => (
              <li key={one.part.id}>
                <button type="button" className={styles.row} onClick={() => setPartId(one.part.id)}>
                  <span className={styles.name}>{one.part.name}</span>
                  <span className={styles.note}>{one.pieces.length} pieces</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className={styles.section}>
        <h3>Gauge</h3>
        <GaugeList bench={bench} onChosen={onClose} />
        <Choice
          bench
          label="A figure without a unit is in"
          value={bench.unit}
          onChange={bench.setUnit}
          options={[
            { value: 'mm', label: 'mm' },
            { value: 'in', label: 'inches' },
          ]}
        />
      </section>
      <section className={styles.section}>
        <h3>Order</h3>
        <Choice
          bench
          label="When a feature is done, go on with"
          value={where.order}
          onChange={where.setOrder}
          options={[
            { value: 'all of a piece', label: 'all of a piece' },
            { value: 'this feature on every piece', label: 'this feature on every piece' },
          ]}
        />
      </section>
      {person.people.length === 0 ? null : (
        <section className={styles.section}>
          <h3>Who measures</h3>
          <ul className={styles.list} aria-label="People">
            {[...person.people, { id: null, name: 'nobody named' }].map(({ id, name }) => (
              <li key={id ?? ''}>
                <button
                  type="button"
                  className={styles.row}
                  aria-pressed={id === person.id}
                  onClick={() => {
                    person.choose(id);
                    onClose();
                  }}
                >
                  <span className={styles.name}>{name}</span>
                </button>
              </li>
            ))}
          </ul>
          {person.trouble === null ? null : <p className={styles.says}>{person.trouble}</p>}
        </section>
      )}
      <ThisDevice onListKeys={onListKeys} />
      <nav className={styles.section} aria-label="Sheets">
        <h3>Other sheets</h3>
        <ul className={styles.list}>
          {jobIndex(view.sheet.job.id)
            .filter(({ label }) => label !== 'Bench')
            .concat({ label: 'Jobs', href: '/' }, { label: 'Settings', href: '/settings' })
            .map(({ label, href, number }) => (
              <li key={label}>
                <Link className={styles.row} href={href}>
                  <span className={styles.name}>{label}</span>
                  {number === undefined ? null : <span className={styles.note}>Alt {number}</span>}
                </Link>
              </li>
            ))}
        </ul>
      </nav>
    </BenchDialog>
  );
}

/** What this device does besides: off until it is switched on here. */
function ThisDevice({ onListKeys }: { onListKeys: () => void }) {
  return (
    <section className={styles.section}>
      <h3>This device</h3>
      <div className={styles.pair}>
        <Switch label="Sound" name="sound" usual="off" />
        <Switch label="Vibration" name="vibration" usual="off" />
        <Switch label="Single letters as keys" name="keys" usual="on" />
        <Switch label="The phone's own keyboard" name="soft-keyboard" usual="off" />
      </div>
      <button type="button" className={styles.row} onClick={onListKeys}>
        <span className={styles.name}>Keys</span>
        <span className={styles.note}>what each does</span>
      </button>
    </section>
  );
}

function Switch({ label, name, usual }: { label: string; name: string; usual: 'on' | 'off' }) {
  const [word, say] = useMemory(name);
  return (
    <Choice
      label={label}
      name={name}
      value={word === 'on' || word === 'off' ? word : usual}
      onChange={say}
      options={[
        { value: 'off', label: 'off' },
        { value: 'on', label: 'on' },
      ]}
    />
  );
}

function isTaken({ view }: Bench, pieceId: string, featureId: string): boolean {
  const feature = view.sheet.features.find(({ id }) => id === featureId);
  if (feature === undefined) return false;
  return entryNext(feature, view.cell(pieceId, featureId).readings).next === null;
}
