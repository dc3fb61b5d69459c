'use client';

import { useEffect, useState, type RefObject } from 'react';

/** The width of an element, px, kept up to date; `firstPx` until it is on the screen. */
export function useWidth(ref: RefObject<HTMLElement | null>, firstPx: number): number {
  const [widthPx, setWidthPx] = useState(firstPx);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => setWidthPx(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return widthPx;
}
