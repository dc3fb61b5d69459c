/** How messages are told apart: at every CR or LF, at a comma or a tab too, or by a pause alone. */
export type MessageCut = 'line' | 'comma' | 'tab' | 'pause';

export type MessageReader = {
  /** The messages that end within these bytes, without their ends. */
  push(bytes: Uint8Array): ReadMessage[];
  /** Nothing came for the length of a pause: what stands is a message where pauses tell them apart. */
  pause(): ReadMessage[];
  /** Something was lost or changed on the line: what is being sent now is dropped, up to its end. */
  spoil(): void;
};

/** A message as it came, or one that cannot be trusted: too long, or with bytes that are no characters. */
export type ReadMessage = { kind: 'message'; text: string } | { kind: 'spoilt' };

/** Longer than any reading; without an end so far, the line is set wrong. */
const longest = 64;

/**
 * Cuts the bytes of a serial line into messages. An unfinished one is never given out, and of a spoilt one
 * nothing is: a figure with a lost or changed character may look like a good one.
 *
 * Characters are ASCII. A byte above 7E hex is what a line reads that is set to another parity than its gauge.
 *
 * @param fromTheMiddle the line was opened while something was being sent: its end comes first, and is dropped
 */
export function messageReader(cut: MessageCut, fromTheMiddle = false): MessageReader {
  let text = '';
  let isSpoilt = fromTheMiddle;
  const isEnd = (character: string) =>
    character === '\r' ||
    character === '\n' ||
    (cut === 'comma' && character === ',') ||
    (cut === 'tab' && character === '\t');
  const take = (): ReadMessage[] => {
    const whole = text;
    const wasSpoilt = isSpoilt;
    text = '';
    isSpoilt = false;
    return wasSpoilt || whole.trim() === '' ? [] : [{ kind: 'message', text: whole }];
  };
  return {
    push(bytes) {
      const found: ReadMessage[] = [];
      for (const byte of bytes) {
        const character = String.fromCharCode(byte);
        if (isEnd(character)) found.push(...take());
        else if (isSpoilt) continue;
        else if (byte > 0x7e || text.length === longest) {
          text = '';
          isSpoilt = true;
          found.push({ kind: 'spoilt' });
        } else text += character;
      }
      return found;
    },
    pause() {
      if (cut === 'pause') return take();
      return [];
    },
    spoil() {
      text = '';
      isSpoilt = true;
    },
  };
}
