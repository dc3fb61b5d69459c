/** One commit of the entry line. */
export type EntryCommit = {
  text: string;
  gaugeId: string;
  /** By a clock that only runs forward, ms. */
  atMs: number;
};

/** A button that bounces, or one press that comes through two channels, is this quick; a hand is not. */
export const bounceMs = 400;

/**
 * Whether a commit is the bounce of the one before: the same text with the same gauge within 400 ms.
 * It is then shown, and kept only if a person says so.
 */
export function isEntryRepeat(before: EntryCommit | null, now: EntryCommit): boolean {
  if (before === null) return false;
  const gapMs = now.atMs - before.atMs;
  return (
    before.text === now.text && before.gaugeId === now.gaugeId && gapMs >= 0 && gapMs < bounceMs
  );
}
