'use client';

import { Fragment, useState, type ReactNode } from 'react';
import { uuidv7 } from '@/lib/outbox/ids';
import { Button } from '../primitives/button';
import { Panel } from '../primitives/panel';
import styles from './tables.module.css';
import { useShopThings } from './use-shop-things';

/** What is said of a row: beside its name, and after it. */
export type Line = { figure: string; range: string; remark: string };

/** What the form of a row is given. */
export type OwnForm<Row> = {
  /** The one that is changed; null makes a new one. */
  row: Row | null;
  busy: boolean;
  onKeep: (fields: Record<string, unknown>) => Promise<void>;
  onLeave: () => void;
};

type OwnRow = { id: string; version: number; name: string; struckAt: string | null };

type Props<Row extends OwnRow> = {
  title: string;
  note: string;
  address: Parameters<typeof useShopThings>[0];
  /** On the button that opens an empty form. */
  add: string;
  own: readonly Row[];
  lineOf: (row: Row) => Line;
  starters: readonly (Line & { key: string; name: string })[];
  renderForm: (given: OwnForm<Row>) => ReactNode;
  /** Under the table. */
  children: ReactNode;
};

/** A table of the shop: its own rows, to change and strike out, those to start from, and those struck out. */
export function OwnTable<Row extends OwnRow>(props: Props<Row>) {
  const { title, note, own, lineOf } = props;
  const [open, setOpen] = useState<string | null>(null);
  const { make, change, trouble, busy } = useShopThings(props.address);
  const live = own.filter(({ struckAt }) => struckAt === null);
  const struck = own.filter(({ struckAt }) => struckAt !== null);
  const asked = live.find(({ id }) => id === open);
  return (
    <Panel title={title} note={note}>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      {open === null ? (
        <Button onClick={() => setOpen('new')}>{props.add}</Button>
      ) : (
        <Fragment key={open}>
          {props.renderForm({
            row: asked ?? null,
            busy,
            onLeave: () => setOpen(null),
            onKeep: async (fields) => {
              const done =
                asked === undefined
                  ? await make({ id: uuidv7(), ...fields })
                  : await change(asked.id, { version: asked.version, ...fields });
              if (done) setOpen(null);
            },
          })}
        </Fragment>
      )}
      <ul className={styles.rows} aria-label={title}>
        {live.map((row) => (
          <li key={row.id}>
            <Told name={row.name} {...lineOf(row)} own />
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
        {props.starters.map(({ key, ...line }) => (
          <li key={key}>
            <Told {...line} />
          </li>
        ))}
        {struck.map((row) => (
          <li key={row.id}>
            <Told name={row.name} {...lineOf(row)} range="struck out" struck />
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
      {props.children}
    </Panel>
  );
}

type ToldProps = Line & { name: string; own?: boolean; struck?: boolean };

function Told({ name, figure, range, remark, own = false, struck = false }: ToldProps) {
  return (
    <>
      <span className={`${styles.name} ${struck ? 'struck' : ''}`}>{name}</span>
      <span className={styles.figure}>{figure}</span>
      <span className={styles.range}>{range}</span>
      <span className={styles.remark}>
        {own ? ['your own', remark].filter(Boolean).join('; ') : remark}
      </span>
    </>
  );
}
