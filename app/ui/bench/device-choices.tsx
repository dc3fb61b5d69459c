'use client';

import { blindChoice } from '@/lib/rules/entry-blind';
import { Choice } from '../primitives/choice';
import styles from './device-choices.module.css';
import { PedalTeacher } from './pedal-teacher';
import { useMemory } from './use-memory';

/** What this device does at the Bench besides: each is kept here, as it is chosen. */
export function DeviceChoices() {
  return (
    <div className={styles.choices}>
      <Switch label="Sound" name="sound" usual="off" />
      <Switch label="Vibration" name="vibration" usual="off" />
      <Switch label="Number read out" name="aloud" usual="off" />
      <Switch label="Last digits only" name="last-digits" usual="off" />
      <BlindSwitch />
      <Switch label="Single letters as keys" name="keys" usual="on" />
      <Switch label="Phone keyboard" name="soft-keyboard" usual="off" />
      <section className={styles.wide} aria-label="Foot switch">
        <h4 className={styles.label}>Foot switch</h4>
        <PedalTeacher />
      </section>
    </div>
  );
}

function BlindSwitch() {
  const [word, say] = useMemory('blind');
  const choice = String(blindChoice(word));
  const numbers = ['3', '5', '10'];
  return (
    <div className={styles.wide}>
      <Choice
        label="Measure unseen: earlier readings, size and target are hidden until a set is done"
        name="blind"
        value={choice}
        onChange={(value) => {
          say(value);
          // The server draws the page before this device's memory can be asked.
          document.cookie = `fw-blind=${value}; path=/; max-age=31536000; samesite=lax`;
        }}
        options={[
          { value: 'off', label: 'off' },
          { value: 'plan', label: 'every place of a feature' },
          ...(numbers.includes(choice) || choice === 'off' || choice === 'plan'
            ? numbers
            : [...numbers, choice]
          ).map((value) => ({ value, label: `${value} readings` })),
        ]}
      />
    </div>
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
