'use client';

import { useEffect, useEffectEvent, useRef, type RefObject } from 'react';
import { moved, wholeWindow, zoomed, type Window } from '../charts/window';

/** Where the plot begins and ends within its box, px; as the chart's own layout. */
const plot = { left: 68, right: 84 };
const step = 0.25;
const nearer = 0.6;

type Handling = {
  box: RefObject<HTMLDivElement | null>;
  window: Window;
  last: number;
  setWindow: (next: Window) => void;
};

/** Moving along a run and looking nearer: by keys, by dragging, by two fingers, by the wheel with Ctrl. */
export function useHandling({ box, window: seen, last, setWindow }: Handling) {
  const fingers = useRef(new Map<number, number>());
  const act = (name: string): boolean => {
    const middle = (seen.from + seen.to) / 2;
    const next = {
      nearer: () => zoomed(seen, nearer, middle, last),
      farther: () => zoomed(seen, 1 / nearer, middle, last),
      earlier: () => moved(seen, -step, last),
      later: () => moved(seen, step, last),
      first: () => moved(seen, -Infinity, last),
      newest: () => moved(seen, Infinity, last),
      all: () => wholeWindow(last),
    }[name];
    if (next === undefined) return false;
    setWindow(next());
    return true;
  };
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const name = keys[event.key];
    if (name !== undefined && act(name)) event.preventDefault();
  });
  const ordinalAt = (clientX: number): number => {
    const rect = box.current!.getBoundingClientRect();
    const part = (clientX - rect.left - plot.left) / (rect.width - plot.left - plot.right);
    return seen.from + part * (seen.to - seen.from);
  };
  const perPx = () => {
    const width = box.current!.getBoundingClientRect().width - plot.left - plot.right;
    return (seen.to - seen.from) / Math.max(1, width);
  };
  const onWheel = useEffectEvent((event: WheelEvent) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    setWindow(zoomed(seen, Math.exp(event.deltaY / 200), ordinalAt(event.clientX), last));
  });
  const onMove = useEffectEvent((event: PointerEvent) => {
    const before = fingers.current.get(event.pointerId);
    if (before === undefined) return;
    const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
    fingers.current.set(event.pointerId, event.clientX);
    if (other === undefined) {
      const by = (before - event.clientX) * perPx();
      setWindow(moved(seen, by / (seen.to - seen.from), last));
      return;
    }
    const [was, is] = [Math.abs(before - other), Math.abs(event.clientX - other)];
    if (was < 1 || is < 1) return;
    setWindow(zoomed(seen, was / is, ordinalAt((event.clientX + other) / 2), last));
  });
  useEffect(() => {
    const at = box.current;
    if (at === null) return;
    const held = fingers.current;
    const listening = new AbortController();
    const { signal } = listening;
    at.addEventListener('keydown', (event) => onKey(event), { signal });
    at.addEventListener('wheel', (event) => onWheel(event), { signal, passive: false });
    at.addEventListener(
      'pointerdown',
      (event) => {
        // Only the picture is dragged; what stands under it is pressed as usual.
        if (event.button !== 0 || !(event.target instanceof HTMLCanvasElement)) return;
        held.set(event.pointerId, event.clientX);
        at.setPointerCapture(event.pointerId);
      },
      { signal },
    );
    at.addEventListener('pointermove', (event) => onMove(event), { signal });
    for (const end of ['pointerup', 'pointercancel'] as const) {
      at.addEventListener(end, (event) => void held.delete(event.pointerId), { signal });
    }
    return () => listening.abort();
  }, [box]);
  return { act };
}

const keys: Record<string, string> = {
  '+': 'nearer',
  '=': 'nearer',
  '-': 'farther',
  ArrowLeft: 'earlier',
  ArrowRight: 'later',
  Home: 'first',
  End: 'newest',
  '0': 'all',
};
