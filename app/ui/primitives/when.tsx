'use client';

import { useSyncExternalStore } from 'react';
import { dayAndTime } from '@/lib/text/when';

const never = () => () => {};

/** An instant in the reader's own time zone, which only the browser knows: empty until it is there. */
export function When({ at }: { at: string }) {
  const here = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  return <time dateTime={at}>{here ? dayAndTime(at) : '\u00a0'}</time>;
}
