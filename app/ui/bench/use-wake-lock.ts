'use client';

import { useEffect } from 'react';

/** Keeps the screen awake while this is mounted and seen, where the browser can. */
export function useWakeLock(): void {
  useEffect(() => {
    if (!('wakeLock' in navigator)) return undefined;
    let lock: WakeLockSentinel | null = null;
    let over = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        const got = await navigator.wakeLock.request('screen');
        if (over) await got.release();
        else lock = got;
      } catch {
        // Battery saving, or a page that may not: the screen sleeps as it always did.
      }
    };
    void ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, []);
}
