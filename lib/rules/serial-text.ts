import { serialFrame } from './serial-frame';

/**
 * The text of a reading in one message of a serial gauge, without the spaces and control characters around
 * it; empty where nothing is left.
 *
 * Two kinds of message are known: that of fixed length (see `serialFrame`), and the free one, spaces, a sign,
 * figures with a mark anywhere, spaces, a unit that may be absent. What is neither comes back as it is: the
 * reader of lengths says what is wrong with it, and nothing is picked out of it.
 *
 * Source: design/capture.md 1.2, "ASCII line, fixed" and "ASCII line, free" (a balance manual, easymanua.ls).
 */
export function serialText(message: string): string {
  const fixed = serialFrame(message);
  if (fixed !== null) return fixed;
  const plain = message.replace(controls, ' ').trim();
  const free = spaced.exec(plain);
  // A sign may stand apart from its figures: "+   18.003 mm".
  return free === null ? plain : `${free[1]}${free[2]}`;
}

// oxlint-disable-next-line no-control-regex -- some gauges send them
const controls = /[\u0000-\u001f\u007f]+/g;
const spaced = /^([+-])\s+(\d.*|[.,]\d.*)$/;
