'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import type { Gauge } from '@/lib/schema/gauge';
import { sendsWords } from '@/lib/text/gauge-sends-words';
import { gaugeWords } from '@/lib/text/gauge-words';
import type { DecimalMark } from '@/lib/units/picometres';
import { Button } from '../primitives/button';
import { EmptyState } from '../primitives/empty-state';
import { When } from '../primitives/when';
import { GaugeForm } from './gauge-form';
import styles from './gauges.module.css';

const TeachGauge = dynamic(() => import('./teach-gauge'), { ssr: false });

type Usage = { gaugeId: string; readings: number; lastAt: string | null };
type Props = {
  gauges: readonly Gauge[];
  usage: readonly Usage[];
  decimal: DecimalMark;
  /** The gauge to be taught at once, where somebody came from the Bench for it. */
  teach: string | null;
};

/** The register of gauges: what each shows, how well it is known, how much it has been used. */
export function GaugeRegister({ gauges, usage, decimal, teach }: Props) {
  const [open, setOpen] = useState<string | null>(null);
  const [taught, setTaught] = useState(teach);
  const live = gauges.filter((gauge) => gauge.struckAt === null);
  const asked = live.find((gauge) => gauge.id === open);
  const learner = live.find((gauge) => gauge.id === taught);
  if (live.length === 0 && open === null) {
    return (
      <>
        <h1 className="unseen">Gauges</h1>
        <EmptyState sentence="No gauges yet. A reading needs the gauge it was taken with: write down the first one.">
          <Button kind="main" onClick={() => setOpen('new')}>
            Add a gauge
          </Button>
        </EmptyState>
      </>
    );
  }
  return (
    <>
      <h1>Gauges</h1>
      {learner !== undefined && open === null && (
        <TeachGauge key={learner.id} gauge={learner} onDone={() => setTaught(null)} />
      )}
      {open !== null && (
        <GaugeForm
          key={open}
          gauge={asked ?? null}
          decimal={decimal}
          onDone={() => setOpen(null)}
        />
      )}
      {live.length > 0 && (
        <table className={styles.register}>
          <caption className="unseen">Gauges</caption>
          <thead>
            <tr>
              <th scope="col">Gauge</th>
              <th scope="col">Reads to</th>
              <th scope="col">Known to</th>
              <th scope="col">From and to</th>
              <th scope="col">Last checked</th>
              <th scope="col">Readings</th>
            </tr>
          </thead>
          <tbody>
            {live.map((gauge) => {
              const words = gaugeWords(gauge, decimal);
              const used = usage.find(({ gaugeId }) => gaugeId === gauge.id);
              return (
                <tr key={gauge.id}>
                  <th scope="row">
                    <button
                      type="button"
                      className={`${styles.name} on-paper`}
                      onClick={() => {
                        setTaught(null);
                        setOpen(gauge.id);
                      }}
                    >
                      {gauge.name}
                    </button>
                    <span className={styles.remark}>
                      {[gauge.kind, gauge.note].filter(Boolean).join('. ')}
                    </span>
                    <span className={styles.remark}>
                      {sendsWords('It', gauge)}{' '}
                      <button
                        type="button"
                        className={styles.teach}
                        onClick={() => {
                          setOpen(null);
                          setTaught(gauge.id);
                        }}
                      >
                        {gauge.sendsEnd === null ? 'Teach how it sends' : 'Teach it again'}
                        <span className="unseen"> : {gauge.name}</span>
                      </button>
                    </span>
                  </th>
                  <td data-label="Reads to" className={styles.figure}>
                    {words.resolution}
                  </td>
                  <td data-label="Known to" className={styles.figure}>
                    {words.uncertainty ?? <span className={styles.warm}>not known</span>}
                  </td>
                  <td data-label="From and to" className={styles.figure}>
                    {words.range}
                  </td>
                  <td data-label="Last checked">
                    {words.checked ?? <span className={styles.warm}>not recorded</span>}
                  </td>
                  <td data-label="Readings">
                    {used?.readings ?? 0}
                    {used !== undefined && used.lastAt !== null && (
                      <span className={styles.remark}>
                        last <When at={used.lastAt} />
                      </span>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {open === null && learner === undefined && (
        <div className={styles.buttons}>
          <Button kind="main" onClick={() => setOpen('new')}>
            Add a gauge
          </Button>
        </div>
      )}
    </>
  );
}
