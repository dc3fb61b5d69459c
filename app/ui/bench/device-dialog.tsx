'use client';

import { trayWords } from '@/lib/text/tray-words';
import { BenchDialog } from './bench-dialog';
import { DeviceChoices } from './device-choices';
import styles from './list.module.css';
import { useMemory } from './use-memory';

type Props = { onClose: () => void; onListKeys: () => void; onTray: () => void };

/** This device at the Bench, in one list: one tap or one key away. */
export function DeviceDialog({ onClose, onListKeys, onTray }: Props) {
  const [soft, say] = useMemory('soft-keyboard');
  return (
    <BenchDialog title="This device" onClose={onClose}>
      <button
        type="button"
        className={styles.row}
        onClick={() => {
          say(soft === 'on' ? 'off' : 'on');
          onClose();
        }}
      >
        <span className={styles.name}>
          {soft === 'on' ? 'Keys on the screen' : 'Phone keyboard'}
        </span>
        <span className={styles.note}>
          {soft === 'on' ? 'instead of the phone keyboard' : 'instead of the keys on the screen'}
        </span>
      </button>
      <section className={styles.section}>
        <DeviceChoices />
      </section>
      <section className={styles.section}>
        <button type="button" className={styles.row} onClick={onListKeys}>
          <span className={styles.name}>Keys</span>
          <span className={styles.note}>what each does</span>
        </button>
        <button type="button" className={styles.row} onClick={onTray}>
          <span className={styles.name}>{trayWords.awayTitle}</span>
          <span className={styles.note}>{trayWords.awayHint}</span>
        </button>
      </section>
    </BenchDialog>
  );
}
