import type { RunPlace } from './run-places';
import type { RunView } from './run-view';

/**
 * The last turn of a run that anything was read of, whatever became of it: what happens at the machine now happens
 * after it. Null before the first.
 */
export function lastTurn({ pieces, read }: Pick<RunView, 'pieces' | 'read'>): RunPlace | null {
  return pieces.findLast(({ ordinal }) => read.has(ordinal)) ?? null;
}
