import Link from 'next/link';
import type { ComponentProps } from 'react';
import styles from './button.module.css';

/** `main` is solid blue, one on a screen; `warm` is the main answer to a question. */
export type ButtonKind = 'plain' | 'main' | 'warm';

type Look = { kind?: ButtonKind; /** 66 high, for gloves. */ bench?: boolean };

/** A thing that is pressed. */
export function Button({
  kind = 'plain',
  bench = false,
  className = '',
  type = 'button',
  ...rest
}: Look & ComponentProps<'button'>) {
  return <button type={type} className={`${lookOf(kind, bench)} ${className}`} {...rest} />;
}

/** A link that looks like one: it goes to another sheet. */
export function LinkButton({
  kind = 'plain',
  bench = false,
  className = '',
  ...rest
}: Look & ComponentProps<typeof Link>) {
  return <Link className={`${lookOf(kind, bench)} ${className}`} {...rest} />;
}

function lookOf(kind: ButtonKind, bench: boolean): string {
  const solid = kind === 'plain' ? '' : `solid ${styles.solid} ${styles[kind]}`;
  return `${styles.button} ${solid} ${bench ? styles.bench : ''}`;
}
