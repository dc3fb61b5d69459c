'use client';

import { useCallback, useSyncExternalStore } from 'react';
import { onMemory, recall, remember } from './device-memory';

/** A word this device remembers; null on the server, while it hydrates, and before it was ever said. */
export function useMemory(name: string): [string | null, (value: string) => void] {
  const value = useSyncExternalStore(
    onMemory,
    () => recall(name),
    () => null,
  );
  const say = useCallback((word: string) => remember(name, word), [name]);
  return [value, say];
}
