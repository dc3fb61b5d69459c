import { bounceMs } from './entry-repeat';

/** What was done, and when, by a clock that only runs forward. */
export type Act = { what: string; atMs: number };

/** Whether an act is the bounce of the one before: the same within 400 ms. It then does nothing. */
export function isActRepeat(before: Act | null, now: Act): boolean {
  if (before === null || before.what !== now.what) return false;
  const gapMs = now.atMs - before.atMs;
  return gapMs >= 0 && gapMs < bounceMs;
}
