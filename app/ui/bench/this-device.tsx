'use client';

import { Choice } from '../primitives/choice';
import styles from './list.module.css';
import { useMemory } from './use-memory';

/** What this device does besides: sound and vibration are off until they are switched on here. */
export function ThisDevice({ onListKeys }: { onListKeys: () => void }) {
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
