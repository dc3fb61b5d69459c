'use client';

import { useEffect, useEffectEvent, useMemo, useRef } from 'react';
import { isActRepeat, type Act } from '@/lib/rules/act-repeat';
import { pedalAct, pedalsOf, type PedalAct, type PedalKey } from '@/lib/rules/entry-pedal';
import { useMemory } from './use-memory';

/** A key as a pedal is known by. */
export function pedalPress(event: KeyboardEvent): PedalKey {
  const { code, key, ctrlKey: ctrl, altKey: alt, shiftKey: shift, metaKey: meta } = event;
  return { code, key, ctrl, alt, shift, meta };
}

/** Where a pedal is being taught, none acts. */
export const teaching = 'data-teaches-a-pedal';

/** Hears the foot switches before anything else on the page does, wherever the focus is. A switch that bounces acts once. */
export function usePedals(play: (act: PedalAct) => void): void {
  const [word] = useMemory('pedals');
  const pedals = useMemo(() => pedalsOf(word), [word]);
  const last = useRef<Act | null>(null);
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    const act = pedalAct(pedalPress(event), pedals);
    if (act === null || document.querySelector(`[${teaching}]`) !== null) return;
    if (isWriting(event)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.repeat) return;
    const now = { what: act, atMs: event.timeStamp };
    if (!isActRepeat(last.current, now)) play(act);
    last.current = now;
  });
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => onKey(event);
    window.addEventListener('keydown', pressed, { capture: true });
    return () => window.removeEventListener('keydown', pressed, { capture: true });
  }, []);
}

/** A key that prints, in a field that is written in: the letter is meant, even where a pedal sends the same. */
function isWriting({ key, target }: KeyboardEvent): boolean {
  if ([...key].length !== 1 || !(target instanceof HTMLElement)) return false;
  return target.matches('textarea, input:not([type=radio], [type=checkbox], [name=reading])');
}
