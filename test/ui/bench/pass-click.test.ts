import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { passClick } from '@/app/ui/bench/pass-click';
import { isHeard } from './is-heard';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const happens = (page: EventTarget, kind: string) => page.dispatchEvent(new Event(kind));

it('lets nothing hear the click that ends a press, however long the finger stays', () => {
  const page = new EventTarget();
  passClick(page);
  vi.advanceTimersByTime(5000);
  happens(page, 'pointerup');
  vi.advanceTimersByTime(300);
  expect(isHeard(page, 1)).toBe(false);
});

it('lets none of two be heard where two thumbs press', () => {
  const page = new EventTarget();
  passClick(page);
  happens(page, 'pointerdown');
  passClick(page);
  happens(page, 'pointerup');
  expect(isHeard(page, 1)).toBe(false);
  happens(page, 'pointerup');
  expect(isHeard(page, 1)).toBe(false);
});

it('lets the next press be heard', () => {
  const page = new EventTarget();
  passClick(page);
  happens(page, 'pointerup');
  happens(page, 'pointerdown');
  happens(page, 'pointerup');
  expect(isHeard(page, 1)).toBe(true);
});

it('lets a click without a press be heard, and any once the press is long over', () => {
  const page = new EventTarget();
  passClick(page);
  expect(isHeard(page, 0)).toBe(true);
  happens(page, 'pointerup');
  vi.advanceTimersByTime(401);
  expect(isHeard(page, 1)).toBe(true);
});
