/** The click of a press comes this soon after the finger is off, or never. */
const clickMs = 400;

/**
 * Lets nothing on the page hear the click that ends the press now going on.
 *
 * A key acts when it is pressed; what it brings up may lie under the finger by the time that is let go, and
 * must not be pressed by it: a question would be answered before it is read. The next press is heard again,
 * and so is a click without a press, which is that of a keyboard or a screen reader.
 */
export function passClick(page: EventTarget): void {
  const over = new AbortController();
  const hear = (kind: string, act: (event: Event) => void) =>
    page.addEventListener(kind, act, { capture: true, signal: over.signal });
  hear('click', (event) => {
    if ((event as UIEvent).detail === 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  });
  hear('pointerup', () => setTimeout(() => over.abort(), clickMs));
  hear('pointerdown', () => over.abort());
}
