'use client';

import { memo, type PointerEvent } from 'react';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import styles from './keypad.module.css';
import { passClick } from './pass-click';

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
  | 'log'
  | SideKey;
type SideKey = 'unit' | 'last digits' | 'next' | 'more';

/** What the column beside the figures shows. */
export type KeypadSide = {
  /** What a figure without a unit is in. */
  unit: LengthUnit;
  /** It is not the gauge's own. */
  unitChanged: boolean;
  /** Only last figures are typed; null where that cannot be had now. */
  lastDigits: boolean | null;
  /** What comes next: "piece", "feature"; null at the end of the job. */
  next: string | null;
};

type Props = {
  /** The person's decimal mark: the one mark key shows it. */
  decimal: DecimalMark;
  onKey: (key: KeypadKey) => void;
  /** 56 high, gap 4: for a screen under 700 high. */
  low?: boolean;
  /** Keys share the height there is, on a tablet. */
  fill?: boolean;
  /** The column beside the figures; left out, there are only the figures. */
  side?: KeypadSide;
  /** Only that column, lying: the machine's own keyboard does the rest. */
  sideOnly?: boolean;
  /** Nothing can be logged now: that key says so and does nothing. */
  logOff?: boolean;
};

/** Digits and words under the thumb. A key acts when it is pressed, not when it is let go; pressing long does nothing more. */
export const Keypad = memo(function Keypad(props: Props) {
  const { decimal, onKey, low = false, fill = false, logOff = false, side, sideOnly } = props;
  const beside = side === undefined ? [] : sideKeys(side, onKey);
  if (sideOnly === true) {
    return (
      <fieldset className={`${styles.keypad} ${styles.lying}`} aria-label="Keys">
        {beside}
      </fieldset>
    );
  }
  const key = (value: KeypadKey, shown: string = value, name?: string) => (
    <Key value={value} onKey={onKey} name={name}>
      {shown}
    </Key>
  );
  return (
    <fieldset
      className={`${styles.keypad} ${low ? styles.low : ''} ${fill ? styles.fill : ''} ${side === undefined ? '' : styles.five}`}
      aria-label="Keys"
    >
      {beside[0]}
      {key('7')}
      {key('8')}
      {key('9')}
      <Key value="rub out" onKey={onKey} look={styles.word}>
        Rub out
      </Key>
      {beside[1]}
      {key('4')}
      {key('5')}
      {key('6')}
      <Key value="sign" onKey={onKey} look={styles.word} name="plus or minus">
        + {'\u2212'}
      </Key>
      {beside[2]}
      {key('1')}
      {key('2')}
      {key('3')}
      <Key value="log" onKey={onKey} look={`solid ${styles.log}`} off={logOff}>
        Log
      </Key>
      {beside[3]}
      {key(decimal, decimal, decimal === ',' ? 'comma' : 'point')}
      {key('0')}
      {key('/', '/', 'stroke')}
    </fieldset>
  );
});

function sideKeys(side: KeypadSide, onKey: Props['onKey']) {
  const { unit, unitChanged, lastDigits, next } = side;
  const other = unit === 'mm' ? 'inches' : 'millimetres';
  return [
    <Key
      key="unit"
      value="unit"
      onKey={onKey}
      look={styles.side}
      on={unitChanged}
      name={`${unit}: change to ${other}`}
    >
      <b>{unit}</b>
    </Key>,
    <Key
      key="last"
      value="last digits"
      onKey={onKey}
      look={styles.side}
      on={lastDigits === true}
      off={lastDigits === null}
      name="last digits only"
    >
      last digits
    </Key>,
    <Key
      key="next"
      value="next"
      onKey={onKey}
      look={styles.side}
      off={next === null}
      name={next === null ? 'no next' : `next ${next}`}
    >
      next {next}
    </Key>,
    <Key key="more" value="more" onKey={onKey} look={styles.side} name="more of this device">
      more
    </Key>,
  ];
}

type KeyProps = {
  value: KeypadKey;
  onKey: (key: KeypadKey) => void;
  look?: string | undefined;
  name?: string | undefined;
  off?: boolean;
  /** What it switches is on. */
  on?: boolean | undefined;
  children: React.ReactNode;
};

/**
 * Acts on press. The click that follows the press of a finger or a mouse is let pass, wherever it lands; one
 * that comes without a press (a keyboard, a screen reader) acts.
 */
function Key({ value, onKey, look = '', name, off = false, on, children }: KeyProps) {
  const press = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return;
    // The entry keeps the focus.
    event.preventDefault();
    passClick(event.currentTarget.ownerDocument, event);
    if (!off) onKey(value);
  };
  return (
    <button
      type="button"
      className={`${styles.key} ${look}`}
      aria-label={name}
      aria-disabled={off || undefined}
      aria-pressed={on}
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
