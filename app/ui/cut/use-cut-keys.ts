'use client';

import { useEffect, useEffectEvent } from 'react';

type Acts = {
  main: (() => void) | null;
  spring: (() => void) | null;
  bench: () => void;
  step: (by: 1 | -1) => void;
};

/** What acts by itself when Enter is pressed on it, or when an arrow is. */
const own = 'button, a[href], summary, input, select, textarea, [role="radio"]';

/** Enter takes the cut, S a spring pass, up and down a division more or less; C or Escape goes back to the Bench. */
export function useCutKeys(acts: Acts): void {
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    const on = event.target instanceof HTMLElement ? event.target : null;
    const writes = on !== null && on.matches('input:not([type=radio]), textarea, select');
    if (event.key === 'Escape') acts.bench();
    else if (writes || (on !== null && on.matches('[type=radio]') && event.key.startsWith('Arrow')))
      return;
    else if (event.key === 'Enter' && (on === null || !on.matches(own))) acts.main?.();
    else if (event.key.toLowerCase() === 's' && !event.repeat) acts.spring?.();
    else if (event.key.toLowerCase() === 'c' && !event.repeat) acts.bench();
    else if (event.key === 'ArrowUp') acts.step(1);
    else if (event.key === 'ArrowDown') acts.step(-1);
    else return;
    event.preventDefault();
  });
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => onKey(event);
    document.addEventListener('keydown', pressed);
    return () => document.removeEventListener('keydown', pressed);
  }, []);
}
