import { useId } from 'react';
import styles from './choice.module.css';

type Props<Value extends string> = {
  label: string;
  /** Of the radio group; must be its own on the page. */
  name?: string;
  options: readonly { value: Value; label: string; hint?: string }[];
  value: Value | null;
  onChange: (value: Value) => void;
  bench?: boolean;
  disabled?: boolean;
};

/** One of a few, drawn as boxes side by side; the chosen one has a heavy frame. */
export function Choice<Value extends string>({
  label,
  name,
  options,
  value,
  onChange,
  bench = false,
  disabled = false,
}: Props<Value>) {
  const own = useId();
  return (
    <fieldset className={styles.choice} disabled={disabled}>
      <legend className={styles.label}>{label}</legend>
      <div className={styles.boxes}>
        {options.map((option) => (
          <label key={option.value} className={`${styles.box} ${bench ? styles.bench : ''}`}>
            <input
              type="radio"
              className="unseen"
              name={name ?? own}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span className={styles.words}>{option.label}</span>
            {option.hint === undefined ? null : <span className={styles.hint}>{option.hint}</span>}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
