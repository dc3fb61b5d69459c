'use client';

import type { DeviceWord } from '@/lib/text/bench-head';
import { useMedia } from './use-media';

/** What the person calls the machine in their hand, as far as its pointer and its size tell. */
export function useDeviceWord(): DeviceWord {
  const isTouch = useMedia('(pointer: coarse)');
  const isWide = useMedia('(min-width: 768px)');
  if (!isTouch) return 'computer';
  return isWide ? 'tablet' : 'phone';
}
