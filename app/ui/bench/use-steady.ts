'use client';

import { useCallback, useLayoutEffect, useRef } from 'react';

/** The same function for good that does what the newest one given does; for events, never while drawing. */
export function useSteady<Given extends unknown[], Answer>(
  act: (...given: Given) => Answer,
): (...given: Given) => Answer {
  const latest = useRef(act);
  useLayoutEffect(() => {
    latest.current = act;
  });
  return useCallback((...given: Given) => latest.current(...given), []);
}
