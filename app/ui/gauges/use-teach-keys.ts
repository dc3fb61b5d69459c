'use client';

import { useEffect, useEffectEvent, type RefObject } from 'react';
import type { Arrival } from '@/lib/rules/teach-gauge';

/** An end pressed this soon behind a character is the gauge's; a hand that goes on to a button is slower. */
const ownEndMs = 300;

/**
 * Hears what a keyboard-type gauge types, wherever the focus is, but for another field that is written in.
 *
 * Keys without a name are heard by what they put into `box`. Enter, Tab and Space are a person's where
 * nothing came just before.
 */
export function useTeachKeys(
  box: RefObject<HTMLInputElement | null>,
  onArrival: (arrival: Arrival) => void,
): void {
  const heard = useEffectEvent(onArrival);
  useEffect(() => {
    let lastMs = -Infinity;
    const tell = (character: string, atMs: number) => {
      lastMs = character === '\r' || character === '\t' ? -Infinity : atMs;
      heard({ character, atMs });
    };
    const onKey = (event: KeyboardEvent) => {
      const { key, ctrlKey, altKey, metaKey, timeStamp, target } = event;
      if (target !== box.current && isWrittenIn(target)) return;
      const isOwn = timeStamp - lastMs < ownEndMs;
      const take = (character: string | null) => {
        event.preventDefault();
        event.stopPropagation();
        if (character !== null) tell(character, timeStamp);
      };
      if (ctrlKey && !altKey && !metaKey && key.toLowerCase() === 'a') return take(null);
      if (metaKey || (ctrlKey && !altKey) || (altKey && !ctrlKey)) return;
      if (event.repeat || event.isComposing) return;
      if (key === 'Enter' && isOwn) return take('\r');
      if (key === 'Tab' && isOwn && !event.shiftKey) return take('\t');
      if ([...key].length !== 1 || (key === ' ' && !isOwn)) return;
      take(key);
    };
    const onInsert = (event: InputEvent) => {
      if (event.inputType === 'insertText') {
        for (const character of event.data ?? '') tell(character, event.timeStamp);
      }
      event.preventDefault();
    };
    const field = box.current;
    document.addEventListener('keydown', onKey, { capture: true });
    field?.addEventListener('beforeinput', onInsert);
    field?.focus();
    return () => {
      document.removeEventListener('keydown', onKey, { capture: true });
      field?.removeEventListener('beforeinput', onInsert);
    };
  }, [box]);
}

function isWrittenIn(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !/^(?:radio|checkbox|button)$/.test(target.type);
  return target instanceof HTMLElement && /^(?:TEXTAREA|SELECT)$/.test(target.tagName);
}
