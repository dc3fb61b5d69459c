'use client';

import { useCallback, useMemo } from 'react';
import { uuidv7 } from '@/lib/outbox/ids';
import { unplacedOf, type Unplaced } from '@/lib/rules/entry-unplaced';
import { recall, remember } from './device-memory';
import { useMemory } from './use-memory';

export type UnplacedList = {
  list: readonly Unplaced[];
  add: (item: Omit<Unplaced, 'id'>) => void;
  /** Takes one off, or all; what is taken is typed again, or thrown away. */
  take: (id: string | 'all') => void;
};

/** Texts typed for this job that are no readings yet. They outlive the page, since nobody has settled them. */
export function useUnplaced(jobId: string): UnplacedList {
  const name = `unplaced:${jobId}`;
  const [word] = useMemory(name);
  const list = useMemo(() => unplacedOf(word), [word]);
  const say = useCallback(
    (change: (old: readonly Unplaced[]) => readonly Unplaced[]) =>
      // Two may come within one event: what is remembered counts, not what was drawn.
      remember(name, JSON.stringify(change(unplacedOf(recall(name))))),
    [name],
  );
  return useMemo(
    () => ({
      list,
      add: (item) => say((old) => [...old, { ...item, id: uuidv7() }]),
      take: (id) => say((old) => (id === 'all' ? [] : old.filter((one) => one.id !== id))),
    }),
    [list, say],
  );
}
