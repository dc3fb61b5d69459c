'use client';

import { useCallback, useSyncExternalStore } from 'react';
import { onMemory, recall, remember } from './device-memory';

/**
 * A word this device remembers; null before it was ever said. The server and a page that is coming alive
 * have `first`.
 */
export function useMemory(
  name: string,
  first: string | null = null,
): [string | null, (value: string) => void] {
  const value = useSyncExternalStore(
    onMemory,
    () => recall(name),
    () => first,
  );
  const say = useCallback((word: string) => remember(name, word), [name]);
  return [value, say];
}
