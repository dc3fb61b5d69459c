/**
 * What the Bench remembers on this device between visits: where it stopped, which gauge a feature was read
 * with, in what order, and whether it makes a sound. Nothing measured is ever kept here.
 */
export function recall(name: string): string | null {
  try {
    return localStorage.getItem(`fw-bench-${name}`);
  } catch {
    return null;
  }
}

/** Remembers a word; a browser that forbids it forgets, and nothing else happens. */
export function remember(name: string, value: string): void {
  try {
    localStorage.setItem(`fw-bench-${name}`, value);
    for (const listener of listeners) listener();
  } catch {
    // Private windows and full stores: the Bench works without a memory.
  }
}

/** For `useSyncExternalStore`: told of every `remember`, here and in other tabs. */
export function onMemory(listener: () => void): () => void {
  listeners.add(listener);
  window.addEventListener('storage', listener);
  return () => {
    listeners.delete(listener);
    window.removeEventListener('storage', listener);
  };
}

const listeners = new Set<() => void>();
