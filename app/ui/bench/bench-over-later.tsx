'use client';

import { lazy, Suspense, useEffect } from 'react';
import type { BenchOverProps } from './bench-over';

const againMs = 2000;

/** Never fails: a part that did not come is asked for until it does, for the network may be back any moment. */
async function fetchOver(): Promise<typeof import('./bench-over')> {
  while (true) {
    try {
      return await import('./bench-over');
    } catch {
      await new Promise((done) => setTimeout(done, againMs));
    }
  }
}

const Over = lazy(async () => ({ default: (await fetchOver()).BenchOver }));

/** What lies over the bench, out of the script that is needed to take a reading. */
export function BenchOverLater(props: BenchOverProps) {
  return (
    <Suspense fallback={null}>
      <Over {...props} />
    </Suspense>
  );
}

/** Fetches it as soon as the page has nothing else to do, so that it opens at once and without a network too. */
export function useBenchOverSoon(): void {
  useEffect(() => {
    const soon = () => void fetchOver();
    if (typeof requestIdleCallback === 'undefined') {
      const timer = setTimeout(soon, againMs);
      return () => clearTimeout(timer);
    }
    const idle = requestIdleCallback(soon, { timeout: againMs });
    return () => cancelIdleCallback(idle);
  }, []);
}
