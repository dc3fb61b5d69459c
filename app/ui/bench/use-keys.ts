'use client';

import { useEffect, useEffectEvent, useRef, type RefObject } from 'react';
import { entryKey, type KeyRole, type KeyState } from '@/lib/rules/entry-key';

/** True where the role has been played and the key must do nothing more by itself. */
type Play = (role: KeyRole, target: EventTarget | null, atMs: number) => boolean;

/** What acts by itself when Enter or Space is pressed on it, or when an arrow is. */
export const pressed = 'button, a[href], summary, [role="radio"], input[type="radio"]';

/**
 * Hears every key of the page before anything else does, except where another field is being written in.
 *
 * A soft keyboard has no key names: what it is about to insert is judged instead, by `beforeInput`.
 */
export function useKeys(
  input: RefObject<HTMLInputElement | null>,
  state: () => KeyState,
  play: Play,
): {
  beforeInput: (event: InputEvent) => void;
  /** When the key went down that inserts: a busy page inserts late. */
  pressedAtMs: (event: Event) => number;
} {
  /** The key that is down: what one with a name inserts has been judged already. */
  const down = useRef<{ isNamed: boolean; atMs: number } | null>(null);

  const onKey = useEffectEvent((event: KeyboardEvent) => {
    if (event.target !== input.current && isEditable(event.target)) return;
    const isNamed = event.key !== 'Unidentified' && event.key !== 'Process';
    down.current = { isNamed, atMs: event.timeStamp };
    const { key, ctrlKey: ctrl, altKey: alt, metaKey: meta, shiftKey: shift, repeat } = event;
    const press = { key, ctrl, alt, meta, shift, repeat, composing: event.isComposing };
    const role = entryKey(press, state());
    if (role === null || !play(role, event.target, event.timeStamp)) return;
    event.preventDefault();
    event.stopPropagation();
  });
  useEffect(() => {
    const pressedDown = (event: KeyboardEvent) => onKey(event);
    const released = () => {
      down.current = null;
    };
    document.addEventListener('keydown', pressedDown, { capture: true });
    document.addEventListener('keyup', released, { capture: true });
    return () => {
      document.removeEventListener('keydown', pressedDown, { capture: true });
      document.removeEventListener('keyup', released, { capture: true });
    };
  }, []);

  const pressedAtMs = (event: Event) => down.current?.atMs ?? event.timeStamp;
  const beforeInput = (event: InputEvent) => {
    const isNamed = down.current?.isNamed ?? false;
    if (isNamed) down.current = null;
    if (isNamed || event.isComposing || event.inputType !== 'insertText') return;
    const data = event.data ?? '';
    if ([...data].length !== 1) return;
    const press = { key: data, ctrl: false, alt: false, meta: false, shift: false, repeat: false };
    const role = entryKey({ ...press, composing: false }, state());
    if (role !== null && play(role, input.current, pressedAtMs(event))) event.preventDefault();
  };
  return { beforeInput, pressedAtMs };
}

function isEditable(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !/^(?:radio|checkbox|button)$/.test(target.type);
  return target.isContentEditable || /^(?:TEXTAREA|SELECT)$/.test(target.tagName);
}
