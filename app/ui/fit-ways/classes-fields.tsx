'use client';

import { readClasses } from '@/lib/rules/ways/read-classes';
import { lengthWords } from '@/lib/text/length-words';
import { classesEchoWords, classesFaultWords, nominalsDifferWords } from '@/lib/text/ways-words';
import { Field } from '../primitives/field';
import type { WayProps } from './fit-way-fields';
import styles from './fit-ways.module.css';

/** A pair of classes as text, with the limits of both features and the clearances as they are typed. */
export function ClassesFields({ said, borePm, shaftPm, shown, wrong, onChange }: WayProps) {
  const { classes, classesAim } = said;
  const read = readClasses(classes, borePm);
  // Half a pair is not wrong while it is still being typed.
  const isHalf = read.kind === 'wrong' && ['empty', 'alone', 'no-grade'].includes(read.fault.code);
  const asked = wrong?.way === 'classes' && wrong.field === 'classes';
  const error =
    read.kind === 'wrong' && (asked || !isHalf)
      ? classesFaultWords(read.fault, borePm, shown)
      : undefined;
  const echo =
    read.kind === 'classes' && borePm !== null ? classesEchoWords(read, borePm, shown) : null;
  return (
    <>
      <div className={styles.three}>
        <Field
          label="Classes"
          hint="hole a capital: H7/g6"
          autoCapitalize="none"
          autoCorrect="off"
          spellCheck={false}
          maxLength={40}
          value={classes}
          onChange={(event) => onChange({ classes: event.target.value })}
          error={error}
        />
        <Field
          label="Aim"
          hint="empty: the middle"
          inputMode="decimal"
          value={classesAim}
          onChange={(event) => onChange({ classesAim: event.target.value })}
          error={
            wrong?.way === 'classes' && wrong.field === 'aim'
              ? lengthWords(wrong.problem, classesAim)
              : undefined
          }
        />
      </div>
      <div aria-live="polite">
        {echo !== null && (
          <ul className={styles.echo} aria-label="Limits and clearances">
            <li>{echo.hole}</li>
            <li>{echo.shaft}</li>
            <li>{echo.clearance}</li>
          </ul>
        )}
      </div>
      {borePm !== null && shaftPm !== null && borePm !== shaftPm && (
        <p className={styles.remark}>{nominalsDifferWords(borePm, shaftPm, shown)}</p>
      )}
    </>
  );
}
