'use client';

import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/**
 * When the page began to be laid out for paper, null while it is on the screen: what is only for paper is made
 * then, and not before.
 */
export function usePaper(): string | null {
  const [at, setAt] = useState<string | null>(null);
  useEffect(() => {
    const list = matchMedia('print');
    const set = (to: boolean) =>
      flushSync(() => setAt((old) => (to ? (old ?? new Date().toISOString()) : null)));
    const onMedia = () => set(list.matches);
    const before = () => set(true);
    const after = () => set(false);
    list.addEventListener('change', onMedia);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      list.removeEventListener('change', onMedia);
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  return at;
}
