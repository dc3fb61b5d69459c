import styles from './button.module.css';

/** `main` is solid blue, one on a screen; `warm` is the main answer to a question. */
export type ButtonKind = 'plain' | 'main' | 'warm';

export type Look = { kind?: ButtonKind; /** 66 high, for gloves. */ bench?: boolean };

/** The class of what is pressed. */
export function buttonLook(kind: ButtonKind, bench: boolean): string {
  const solid = kind === 'plain' ? '' : `solid ${styles.solid} ${styles[kind]}`;
  return `${styles.button} ${solid} ${bench ? styles.bench : ''}`;
}
