'use client';

import { useCallback, useSyncExternalStore } from 'react';

/** Whether a media query holds; `false` on the server and while the page hydrates. */
export function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (listener: () => void) => {
      const media = mediaOf(query);
      media.addEventListener('change', listener);
      return () => media.removeEventListener('change', listener);
    },
    [query],
  );
  return useSyncExternalStore(
    subscribe,
    () => mediaOf(query).matches,
    () => false,
  );
}

/** Asked at every drawing: the browser need not read the words of a query each time. */
const known = new Map<string, MediaQueryList>();

function mediaOf(query: string): MediaQueryList {
  const media = known.get(query) ?? window.matchMedia(query);
  known.set(query, media);
  return media;
}
