'use client';

import { useSyncExternalStore } from 'react';

/** Whether this browser can read a serial port; false on the server and while the page comes alive. */
export function useHasSerial(): boolean {
  return useSyncExternalStore(
    never,
    () => 'serial' in navigator,
    () => false,
  );
}

const never = () => () => {};
