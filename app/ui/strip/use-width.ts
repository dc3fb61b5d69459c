'use client';

import { useEffect, useState, type RefObject } from 'react';

/**
 * The width of an element, px, kept up to date; `firstPx` until it is on the screen, and while it is
 * not (on paper, in a closed part) the last one it had.
 */
export function useWidth(ref: RefObject<HTMLElement | null>, firstPx: number): number {
  const [widthPx, setWidthPx] = useState(firstPx);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => {
      if (element.clientWidth > 0) setWidthPx(element.clientWidth);
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return widthPx;
}
