'use client';

import type { PointerEvent } from 'react';
import type { DecimalMark } from '@/lib/units/picometres';
import styles from './keypad.module.css';

/** What a key means to the entry. */
export type KeypadKey =
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | DecimalMark
  | '/'
  | 'sign'
  | 'rub out'
  | 'log';

type Props = {
  /** The person's decimal mark: the one mark key shows it. */
  decimal: DecimalMark;
  onKey: (key: KeypadKey) => void;
  /** 56 high, gap 4: for a screen under 700 high. */
  low?: boolean;
  /** Keys share the height there is, on a tablet. */
  fill?: boolean;
  /** Nothing can be logged now: that key says so and does nothing. */
  logOff?: boolean;
};

/** Digits and words under the thumb. A key acts when it is pressed, not when it is let go; pressing long does nothing more. */
export function Keypad({ decimal, onKey, low = false, fill = false, logOff = false }: Props) {
  const key = (value: KeypadKey, shown: string = value, name?: string) => (
    <Key value={value} onKey={onKey} name={name}>
      {shown}
    </Key>
  );
  return (
    <fieldset
      className={`${styles.keypad} ${low ? styles.low : ''} ${fill ? styles.fill : ''}`}
      aria-label="Keys"
    >
      {key('7')}
      {key('8')}
      {key('9')}
      <Key value="rub out" onKey={onKey} look={styles.word}>
        Rub out
      </Key>
      {key('4')}
      {key('5')}
      {key('6')}
      <Key value="sign" onKey={onKey} look={styles.word} name="plus or minus">
        + {'\u2212'}
      </Key>
      {key('1')}
      {key('2')}
      {key('3')}
      <Key value="log" onKey={onKey} look={`solid ${styles.log}`} off={logOff}>
        Log
      </Key>
      {key(decimal, decimal, decimal === ',' ? 'comma' : 'point')}
      {key('0')}
      {key('/', '/', 'stroke')}
    </fieldset>
  );
}

type KeyProps = {
  value: KeypadKey;
  onKey: (key: KeypadKey) => void;
  look?: string | undefined;
  name?: string | undefined;
  off?: boolean;
  children: React.ReactNode;
};

/**
 * Acts on press. The click that follows the press of a finger or a mouse is let pass; one that comes without a
 * press (a keyboard, a screen reader) acts.
 */
function Key({ value, onKey, look = '', name, off = false, children }: KeyProps) {
  const press = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    // The entry keeps the focus.
    event.preventDefault();
    if (!off) onKey(value);
  };
  return (
    <button
      type="button"
      className={`${styles.key} ${look}`}
      aria-label={name}
      aria-disabled={off || undefined}
      onPointerDown={press}
      onClick={(event) => {
        if (event.detail === 0 && !off) onKey(value);
      }}
      onContextMenu={(event) => event.preventDefault()}
    >
      {children}
    </button>
  );
}
