'use client';

import Link from 'next/link';
import { jobIndex } from '../primitives/job-index';
import { Choice } from '../primitives/choice';
import { BenchDialog } from './bench-dialog';
import { GaugeList } from './gauge-list';
import styles from './list.module.css';
import { PieceChoice } from './piece-choice';
import type { Bench } from './use-bench';
import type { Person } from './use-person';

type Props = { bench: Bench; person: Person; onClose: () => void; onDevice: () => void };

/** Another piece, feature, gauge or person: plain lists, one tap each. */
export function ChooseDialog({ bench, person, onClose, onDevice }: Props) {
  const { view, where } = bench;
  const go = (pieceId: string, featureId: string) => {
    where.goTo({ pieceId, featureId });
    onClose();
  };
  return (
    <BenchDialog title="On the bench" onClose={onClose}>
      <PieceChoice bench={bench} onGo={go} />
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
        {bench.gauge === null ? null : (
          <Link className={styles.row} href={`/gauges?teach=${bench.gauge.id}`}>
            <span className={styles.name}>Teach how it sends</span>
            <span className={styles.note}>{bench.gauge.name}</span>
          </Link>
        )}
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
      <section className={styles.section}>
        <button type="button" className={styles.row} onClick={onDevice}>
          <span className={styles.name}>This device</span>
          <span className={styles.note}>sound, letters, pedals, measuring unseen</span>
        </button>
      </section>
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
