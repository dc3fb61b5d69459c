'use client';

import { useState } from 'react';
import type { Material } from '@/lib/schema/material';
import { uuidv7 } from '@/lib/outbox/ids';
import { starterMaterials } from '@/lib/rules/heat/starter-materials';
import { expansionFigure, expansionRangeWords } from '@/lib/text/heat-words';
import type { DecimalMark } from '@/lib/units/picometres';
import { Button } from '../primitives/button';
import { Panel } from '../primitives/panel';
import { MaterialForm } from './material-form';
import styles from './tables.module.css';
import { useShopThings } from './use-shop-things';

type Props = { own: readonly Material[]; decimal: DecimalMark };

/** How much each material grows with heat, between what, and who says so; the shop's own first. */
export function MaterialsPanel({ own, decimal }: Props) {
  const [open, setOpen] = useState<string | null>(null);
  const { make, change, trouble, busy } = useShopThings('materials');
  const live = own.filter(({ struckAt }) => struckAt === null);
  const struck = own.filter(({ struckAt }) => struckAt !== null);
  const asked = live.find(({ id }) => id === open);
  return (
    <Panel title="Materials" note="expansion, millionths a degree C">
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      {open === null ? (
        <Button onClick={() => setOpen('new')}>Add a material of your own</Button>
      ) : (
        <MaterialForm
          key={open}
          material={asked ?? null}
          decimal={decimal}
          busy={busy}
          onLeave={() => setOpen(null)}
          onKeep={async (fields) => {
            const done =
              asked === undefined
                ? await make({ id: uuidv7(), ...fields })
                : await change(asked.id, { version: asked.version, ...fields });
            if (done) setOpen(null);
          }}
        />
      )}
      <ul className={styles.rows} aria-label="Materials">
        {live.map((row) => (
          <li key={row.id}>
            <span className={styles.name}>{row.name}</span>
            <span className={styles.figure}>
              {expansionFigure(row.expansionNanoPerC, { decimal })}
            </span>
            <span className={styles.range}>{expansionRangeWords(row, { decimal })}</span>
            <span className={styles.remark}>
              {['your own', row.source].filter(Boolean).join('; ')}
            </span>
            <span className={styles.acts}>
              <Button disabled={busy} onClick={() => setOpen(row.id)}>
                Change<span className="unseen"> {row.name}</span>
              </Button>
              <Button
                disabled={busy}
                onClick={() => void change(row.id, { version: row.version, struck: true })}
              >
                Strike out<span className="unseen"> {row.name}</span>
              </Button>
            </span>
          </li>
        ))}
        {starterMaterials.map((row) => (
          <li key={row.key}>
            <span className={styles.name}>{row.name}</span>
            <span className={styles.figure}>
              {expansionFigure(row.expansionNanoPerC, { decimal })}
            </span>
            <span className={styles.range}>{expansionRangeWords(row, { decimal })}</span>
            <span className={styles.remark}>
              {row.over}. {row.source}
            </span>
          </li>
        ))}
        {struck.map((row) => (
          <li key={row.id}>
            <span className={`${styles.name} struck`}>{row.name}</span>
            <span className={styles.figure}>
              {expansionFigure(row.expansionNanoPerC, { decimal })}
            </span>
            <span className={styles.range}>struck out</span>
            <span className={styles.remark}>{row.source}</span>
            <span className={styles.acts}>
              <Button
                disabled={busy}
                onClick={() => void change(row.id, { version: row.version, struck: false })}
              >
                Put back<span className="unseen"> {row.name}</span>
              </Button>
            </span>
          </li>
        ))}
      </ul>
      <p className={styles.remark}>
        Another batch of the same name may differ by more than the range. What a hot figure is made
        of is an estimate.
      </p>
    </Panel>
  );
}
