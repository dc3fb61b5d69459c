import { bounceMs } from '@/lib/rules/entry-repeat';

/** Where and when a finger came down; of a pointer event. */
export type Press = Pick<PointerEvent, 'clientX' | 'clientY' | 'timeStamp'>;

/** The click of a press comes this soon after the finger is off, or never. */
const clickMs = 400;

/** A finger that bounces comes down again no further away than this. */
const bouncePx = 24;

/**
 * Lets nothing on the page hear the click that ends the press now going on.
 *
 * A key acts when it is pressed; what it brings up may lie under the finger by the time that is let go, and
 * must not be pressed by it: a question would be answered before it is read. Nor by the same finger when it
 * bounces: within 400 ms, and in the same place. Any other press is heard again, and so is a click without a
 * press, which is that of a keyboard or a screen reader.
 */
export function passClick(page: EventTarget, press: Press): void {
  const over = new AbortController();
  let ending: ReturnType<typeof setTimeout> | undefined;
  const hear = (kind: string, act: (event: Event) => void) =>
    page.addEventListener(kind, act, { capture: true, signal: over.signal });
  hear('click', (event) => {
    if ((event as UIEvent).detail === 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  });
  hear('pointerup', () => {
    ending = setTimeout(() => over.abort(), clickMs);
  });
  hear('pointerdown', (event) => {
    clearTimeout(ending);
    if (!isBounce(press, event as PointerEvent)) over.abort();
  });
}

function isBounce(before: Press, now: Press): boolean {
  const apartPx = Math.hypot(now.clientX - before.clientX, now.clientY - before.clientY);
  return now.timeStamp - before.timeStamp < bounceMs && apartPx <= bouncePx;
}
