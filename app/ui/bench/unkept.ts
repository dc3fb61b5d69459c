import type { Fresh } from './use-fresh';

/**
 * What this device's disk refused, by job. It stands here and not in the Bench, so that it outlives the way to
 * another sheet; while there is any, the browser asks before the page is left.
 */
const byJob = new Map<string, readonly Fresh[]>();
const listeners = new Set<() => void>();
const none: readonly Fresh[] = [];

export function unkeptOf(jobId: string): readonly Fresh[] {
  return byJob.get(jobId) ?? none;
}

/** How many entries, of all jobs, are on no disk. */
export function countUnkept(): number {
  return [...byJob.values()].reduce((sum, list) => sum + list.length, 0);
}

export function addUnkept(jobId: string, one: Fresh): void {
  change(jobId, [...unkeptOf(jobId).filter(({ draft }) => draft.id !== one.draft.id), one]);
}

export function dropUnkept(jobId: string, id: string): void {
  change(
    jobId,
    unkeptOf(jobId).filter(({ draft }) => draft.id !== id),
  );
}

/** For `useSyncExternalStore`. */
export function onUnkept(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

function change(jobId: string, list: readonly Fresh[]): void {
  if (list.length === 0) byJob.delete(jobId);
  else byJob.set(jobId, list);
  if (byJob.size > 0) window.addEventListener('beforeunload', ask);
  else window.removeEventListener('beforeunload', ask);
  for (const listener of listeners) listener();
}

function ask(event: BeforeUnloadEvent): void {
  event.preventDefault();
}
