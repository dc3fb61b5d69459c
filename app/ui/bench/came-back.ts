import type { Asked } from './use-where';
import { recall } from './device-memory';

/** Who was away for less has not been away. */
const awayMs = 10 * 60_000;
/** This page has been loaded again, and the Bench has not said so yet. */
let isReload =
  typeof performance !== 'undefined' &&
  (performance.getEntriesByType('navigation')[0] as PerformanceNavigationTiming | undefined)
    ?.type !== 'navigate';

/**
 * Whether a person who finds the Bench where this device stopped has come back to it: the page was loaded
 * again, or nobody asked for just this piece, or the last act here is long ago. Who only looked at the
 * board and comes back by a link knows where it was.
 */
export function cameBack(asked: Asked, jobId: string): boolean {
  const isAgain = isReload;
  isReload = false;
  const isAsked = asked.pieceId !== null || asked.featureId !== null;
  const lastMs = Number(recall(`act:${jobId}`) ?? 0);
  return isAgain || !isAsked || Date.now() - lastMs > awayMs;
}
