import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { passClick, type Press } from '@/app/ui/bench/pass-click';
import { isHeard } from './is-heard';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const first: Press = { clientX: 300, clientY: 500, timeStamp: 1000 };

/** A finger comes down, the first time or again. */
function down(page: EventTarget, over: Partial<Press> = {}): void {
  const event = new Event('pointerdown');
  for (const [name, value] of Object.entries({ ...first, ...over })) {
    Object.defineProperty(event, name, { value });
  }
  page.dispatchEvent(event);
}
const up = (page: EventTarget) => page.dispatchEvent(new Event('pointerup'));

it('lets nothing hear the click that ends a press, however long the finger stays', () => {
  const page = new EventTarget();
  passClick(page, first);
  vi.advanceTimersByTime(5000);
  up(page);
  vi.advanceTimersByTime(300);
  expect(isHeard(page, 1)).toBe(false);
});

it('lets none of two be heard where two thumbs press', () => {
  const page = new EventTarget();
  passClick(page, first);
  const second = { ...first, clientX: 40 };
  down(page, second);
  passClick(page, second);
  up(page);
  expect(isHeard(page, 1)).toBe(false);
  up(page);
  expect(isHeard(page, 1)).toBe(false);
});

it('lets the next press be heard, in another place at once, and in the same after a moment', () => {
  for (const next of [{ timeStamp: 1399, clientY: 525 }, { timeStamp: 1400 }]) {
    const page = new EventTarget();
    passClick(page, first);
    up(page);
    down(page, next);
    up(page);
    expect(isHeard(page, 1)).toBe(true);
  }
});

it('lets nothing hear the bounce of a finger, however long it then stays', () => {
  const page = new EventTarget();
  passClick(page, first);
  up(page);
  down(page, { timeStamp: 1399, clientX: 324 });
  vi.advanceTimersByTime(1000);
  up(page);
  vi.advanceTimersByTime(300);
  expect(isHeard(page, 1)).toBe(false);
  vi.advanceTimersByTime(101);
  expect(isHeard(page, 1)).toBe(true);
});

it('lets a click without a press be heard, and any once the press is long over', () => {
  const page = new EventTarget();
  passClick(page, first);
  expect(isHeard(page, 0)).toBe(true);
  up(page);
  vi.advanceTimersByTime(401);
  expect(isHeard(page, 1)).toBe(true);
});
