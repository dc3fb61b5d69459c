'use client';

import { useEffect, useId, useRef, type ReactNode } from 'react';
import { Button } from './button';
import styles from './question.module.css';

export type QuestionRow = {
  label: string;
  figure: string;
  note?: string;
  /** The figure in doubt: warm. */
  suspect?: boolean;
};

export type QuestionAnswer = { label: string; onAnswer: () => void; disabled?: boolean };

type Props = {
  title: string;
  /** The arithmetic: what was typed, what it would be otherwise. */
  rows?: readonly QuestionRow[];
  /** What stands whatever is answered. */
  says?: ReactNode;
  /** The first is the main one. */
  answers: readonly QuestionAnswer[];
};

/**
 * A question in the place of the keypad: the arithmetic, then the answers. It stays until one is given;
 * a tap outside does nothing. Focus goes to the question itself, so that no key answers it by accident.
 */
export function Question({ title, rows = [], says, answers }: Props) {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className={styles.question} role="alertdialog" aria-labelledby={id}>
      <h2 id={id} ref={heading} className={styles.title} tabIndex={-1}>
        {title}
      </h2>
      {rows.length === 0 ? null : (
        <table className={styles.rows}>
          <tbody>
            {rows.map(({ label, figure, note, suspect = false }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td className={suspect ? styles.suspect : styles.figure}>{figure}</td>
                <td>{note}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {says === undefined ? null : <p className={styles.says}>{says}</p>}
      <div className={styles.answers}>
        {answers.map(({ label, onAnswer, disabled = false }, index) => (
          <Button
            key={label}
            bench
            kind={index === 0 ? 'warm' : 'plain'}
            className={index === 0 ? styles.main! : ''}
            onClick={onAnswer}
            disabled={disabled}
          >
            {label}
          </Button>
        ))}
      </div>
    </section>
  );
}
