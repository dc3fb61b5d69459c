import styles from './working-figure.module.css';

type Props = {
  /** As it is shown: "17.999", "17,999", "+0.002". */
  text: string;
  /** Of a held reading: the characters under suspicion, from and up to (not with). */
  suspect?: readonly [from: number, to: number];
};

/**
 * A large size: the whole number and its point light, the decimals bold, for they carry the work.
 * Held, the suspected digits are bold and warm and the rest light.
 */
export function WorkingFigure({ text, suspect }: Props) {
  if (suspect !== undefined) {
    const [from, to] = suspect;
    return (
      <span className={styles.figure}>
        {text.slice(0, from)}
        <span className={styles.suspect}>{text.slice(from, to)}</span>
        {text.slice(to)}
      </span>
    );
  }
  const point = text.search(/[.,]/);
  const split = point === -1 ? 0 : point + 1;
  return (
    <span className={styles.figure}>
      {text.slice(0, split)}
      <span className={styles.working}>{text.slice(split)}</span>
    </span>
  );
}
