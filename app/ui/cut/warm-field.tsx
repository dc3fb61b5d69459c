'use client';

import { useState } from 'react';
import { typedDegrees } from '@/lib/rules/cuts/typed-degrees';
import type { DecimalMark } from '@/lib/units/picometres';
import { warmFaultWords } from '@/lib/text/cut-screen-words';
import { Field } from '../primitives/field';
import styles from './cut.module.css';

type Props = {
  decimal: DecimalMark;
  milliC: number | null;
  onSay: (milliC: number | null) => void;
};

/** How warm the piece is, typed at any time; it belongs to the size that was just measured. */
export function WarmField({ decimal, milliC, onSay }: Props) {
  const [text, setText] = useState(
    milliC === null ? '' : String(milliC / 1000).replace('.', decimal),
  );
  const wrong = text.trim() !== '' && typedDegrees(text, decimal) === null;
  return (
    <div className={styles.warm}>
      <Field
        bench
        label="Piece, °C"
        hint="if it is warm"
        inputMode="decimal"
        autoComplete="off"
        value={text}
        onChange={(event) => {
          const typed = event.target.value;
          setText(typed);
          onSay(typedDegrees(typed, decimal));
        }}
        {...(wrong ? { error: warmFaultWords } : {})}
      />
    </div>
  );
}
