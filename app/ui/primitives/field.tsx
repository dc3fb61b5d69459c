import { useId, type ComponentProps, type ReactNode } from 'react';
import styles from './field.module.css';

type Words = {
  label: string;
  /** At the right of the label: what is wanted, or its unit. */
  hint?: ReactNode;
  /** A sentence; what was typed stays. */
  error?: string | undefined;
  /** 56 high, for the bench. */
  bench?: boolean;
};

/** One line of writing. */
export function Field({
  label,
  hint,
  error,
  bench = false,
  className = '',
  ...rest
}: Words & ComponentProps<'input'>) {
  const own = useId();
  const id = rest.id ?? own;
  return (
    <Around label={label} hint={hint} error={error} id={id}>
      <input
        autoComplete="off"
        {...rest}
        {...described(id, hint, error)}
        id={id}
        className={`${boxOf(bench, error)} ${className}`}
      />
    </Around>
  );
}

/** Several lines of writing. */
export function TextField({
  label,
  hint,
  error,
  bench = false,
  className = '',
  rows = 3,
  ...rest
}: Words & ComponentProps<'textarea'>) {
  const own = useId();
  const id = rest.id ?? own;
  return (
    <Around label={label} hint={hint} error={error} id={id}>
      <textarea
        {...rest}
        {...described(id, hint, error)}
        id={id}
        rows={rows}
        className={`${boxOf(bench, error)} ${className}`}
      />
    </Around>
  );
}

type SelectProps = Words &
  Omit<ComponentProps<'select'>, 'onChange' | 'value'> & {
    value: string;
    options: readonly { value: string; label: string }[];
    onChange: (value: string) => void;
  };

/** One of many: a list too long to draw as boxes. */
export function SelectField({
  label,
  hint,
  error,
  bench = false,
  className = '',
  options,
  onChange,
  ...rest
}: SelectProps) {
  const own = useId();
  const id = rest.id ?? own;
  return (
    <Around label={label} hint={hint} error={error} id={id}>
      <select
        {...rest}
        {...described(id, hint, error)}
        id={id}
        className={`${boxOf(bench, error)} ${className}`}
        onChange={(event) => onChange(event.target.value)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Around>
  );
}

function Around({ label, hint, error, id, children }: Words & { id: string; children: ReactNode }) {
  return (
    <div className={styles.field}>
      <div className={styles.words}>
        <label htmlFor={id}>{label}</label>
        {hint === undefined ? null : (
          <span id={`${id}-hint`} className={styles.hint}>
            {hint}
          </span>
        )}
      </div>
      {children}
      {error === undefined ? null : (
        <p id={`${id}-error`} className={styles.error} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

function described(id: string, hint: ReactNode, error: string | undefined) {
  const by = [
    hint === undefined ? '' : `${id}-hint`,
    error === undefined ? '' : `${id}-error`,
  ].filter((part) => part !== '');
  return {
    ...(by.length === 0 ? {} : { 'aria-describedby': by.join(' ') }),
    ...(error === undefined ? {} : { 'aria-invalid': true }),
  };
}

function boxOf(bench: boolean, error: string | undefined): string {
  return `${styles.box} ${bench ? styles.bench : ''} ${error === undefined ? '' : styles.wrong}`;
}
