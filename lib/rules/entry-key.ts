/** The parts of a key press that decide what it is for. */
export type KeyPress = {
  key: string;
  ctrl: boolean;
  alt: boolean;
  meta: boolean;
  shift: boolean;
  /** Held down, so that the machine repeats it. */
  repeat: boolean;
  composing: boolean;
};

/** What the bench is doing when a key comes. */
export type KeyState = {
  /** Nothing stands in the entry line. */
  isEmpty: boolean;
  /** How many answers a question in the entry line has; 0 when nothing is asked. */
  answers: number;
  /** Single letters act; a person may switch that off. */
  shortcuts: boolean;
  /** What the gauge writes before its figures, where it was taught to; its first letter is no shortcut. */
  prefix?: string | null;
};

export type KeyRole =
  | { kind: 'type'; character: string }
  | { kind: 'overwrite' }
  | { kind: 'log' }
  | { kind: 'rub out' }
  | { kind: 'tab' }
  | { kind: 'escape' }
  | { kind: 'answer'; index: number }
  | { kind: 'move'; along: 'stations' | 'directions' | 'plan'; by: 1 | -1 }
  | { kind: 'cell'; by: 1 | -1 }
  | { kind: 'along'; what: 'features' | 'pieces'; by: 1 | -1 }
  | { kind: 'void' }
  | { kind: 'spring pass' }
  | { kind: 'last digits' }
  | { kind: 'this device' }
  | { kind: 'cut' }
  | { kind: 'list keys' };

/**
 * What a key is for on the Bench, wherever the focus is; null where it is none of the Bench's business.
 *
 * Figures, signs, marks and, once something stands there, every printed character belong to the entry.
 * Letters that cannot begin a length act while it is empty: V, N, P, F, W, S, L, D, C and ?; the star, which no
 * length has, at any time. Arrows move over the station map while it is empty. Ctrl+A, which some gauges
 * send first, means that what follows takes the place of what stands in the line; the page is never selected
 * by it. No other combination with Ctrl, Alt or Meta is taken, but AltGr, which reports both, types
 * characters. A key held down repeats only what it types.
 */
export function entryKey(press: KeyPress, state: KeyState): KeyRole | null {
  const { key } = press;
  const altGraph = press.ctrl && press.alt && [...key].length === 1;
  if (isSelectAll(press)) return { kind: 'overwrite' };
  if (press.composing || press.meta || ((press.ctrl || press.alt) && !altGraph)) return null;
  if ([...key].length === 1) return ofCharacter(press, state);
  if (press.repeat) return key === 'Backspace' ? { kind: 'rub out' } : null;
  switch (key) {
    case 'Enter':
      return { kind: 'log' };
    case 'Backspace':
      return { kind: 'rub out' };
    case 'Tab':
      return press.shift ? null : { kind: 'tab' };
    case 'Escape':
      return { kind: 'escape' };
    case 'PageDown':
      return { kind: 'cell', by: 1 };
    case 'PageUp':
      return { kind: 'cell', by: -1 };
    default:
      return state.isEmpty ? (arrows[key] ?? null) : null;
  }
}

function isSelectAll({ key, ctrl, alt, meta, composing }: KeyPress): boolean {
  return ctrl && !alt && !meta && !composing && key.toLowerCase() === 'a';
}

function ofCharacter(press: KeyPress, state: KeyState): KeyRole | null {
  const { key } = press;
  if (state.answers > 0) {
    const index = Number(key) - 1;
    const isAnswer = Number.isInteger(index) && index >= 0 && index < state.answers;
    if (isAnswer && key !== ' ') return press.repeat ? null : { kind: 'answer', index };
  }
  if (key === '*' && state.shortcuts) return press.repeat ? null : { kind: 'last digits' };
  if (!state.isEmpty) return { kind: 'type', character: key };
  if (beginsLength.test(key) || key === state.prefix?.[0]) return { kind: 'type', character: key };
  return state.shortcuts && !press.repeat ? letter(key, press.shift) : null;
}

/** Figures, both marks, signs, fractions in one character, and the unit some gauges send first. */
const beginsLength = /[\d.,+\-\u2212\u2013\u00bc-\u00be\u2153-\u215e]/;

const arrows: Record<string, KeyRole> = {
  ArrowLeft: { kind: 'move', along: 'stations', by: -1 },
  ArrowRight: { kind: 'move', along: 'stations', by: 1 },
  ArrowUp: { kind: 'move', along: 'directions', by: -1 },
  ArrowDown: { kind: 'move', along: 'directions', by: 1 },
};

function letter(key: string, shift: boolean): KeyRole | null {
  switch (key.toLowerCase()) {
    case 'v':
      return { kind: 'void' };
    case 'n':
      return shift ? { kind: 'cell', by: 1 } : { kind: 'move', along: 'plan', by: 1 };
    case 'p':
      return shift ? { kind: 'cell', by: -1 } : { kind: 'move', along: 'plan', by: -1 };
    case 'f':
      return { kind: 'along', what: 'features', by: shift ? -1 : 1 };
    case 'w':
      return { kind: 'along', what: 'pieces', by: shift ? -1 : 1 };
    case 's':
      return { kind: 'spring pass' };
    case 'l':
      return { kind: 'last digits' };
    case 'd':
      return { kind: 'this device' };
    case 'c':
      return { kind: 'cut' };
    case '?':
      return { kind: 'list keys' };
    default:
      return null;
  }
}
