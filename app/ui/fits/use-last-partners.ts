'use client';

import { useCallback, useEffect, useMemo, useSyncExternalStore } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { partnersOf, type Partners } from '@/lib/rules/pair-moves';

/** What this tab has noted; where the device keeps nothing, moves are said since the page was opened. */
const noted = new Map<string, string>();
const listeners = new Set<() => void>();

/**
 * Who went with whom when this device last took note of it, so that a move made meanwhile, also by another
 * device, is said. Null until it is known. A first partner is noted by itself.
 */
export function useLastPartners(fit: FitView) {
  const key = `fitwright pairs ${fit.fit.id}`;
  const text = useSyncExternalStore(
    subscribe,
    () => read(key),
    () => null,
  );
  const last = useMemo(() => (text === null ? null : (JSON.parse(text) as Partners)), [text]);

  useEffect(() => {
    const now = partnersOf(fit);
    const known = last ?? now;
    const fresh = Object.keys(now).filter((piece) => !(piece in known));
    if (last !== null && fresh.length === 0) return;
    write(key, { ...known, ...Object.fromEntries(fresh.map((id) => [id, now[id]!])) });
  }, [fit, key, last]);

  const note = useCallback(() => write(key, partnersOf(fit)), [fit, key]);
  return { last, note };
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function read(key: string): string | null {
  const own = noted.get(key);
  if (own !== undefined) return own;
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function write(key: string, partners: Partners): void {
  const text = JSON.stringify(partners);
  noted.set(key, text);
  try {
    localStorage.setItem(key, text);
  } catch {
    // It stays noted in this tab.
  }
  for (const listener of listeners) listener();
}
