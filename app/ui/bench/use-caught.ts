'use client';

import { useMemo, useSyncExternalStore } from 'react';
import type { Bench } from './use-bench';

type CaughtOf = (typeof import('./caught'))['caughtOf'];

const againMs = 2000;

let known: CaughtOf | null = null;
const listeners = new Set<() => void>();

/** That the piece is past what it was made to; what works that out comes just after the page. */
export function useCaught(bench: Bench): string | null {
  const caughtOf = useSyncExternalStore(
    listen,
    () => known,
    () => null,
  );
  return useMemo(() => caughtOf?.(bench) ?? null, [caughtOf, bench]);
}

/** Brings what works it out; asked for until it comes. */
export async function fetchCaught(): Promise<void> {
  while (known === null) {
    try {
      known = (await import('./caught')).caughtOf;
    } catch {
      await new Promise((done) => setTimeout(done, againMs));
    }
  }
  for (const listener of listeners) listener();
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
