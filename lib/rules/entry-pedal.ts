/** What the three switches of a foot do. */
export const pedalActs = ['commit', 'next', 'take back'] as const;
export type PedalAct = (typeof pedalActs)[number];

/** The key a switch sends: where it is on the keyboard, and what it prints where that is not said. */
export type PedalKey = {
  code: string;
  key: string;
  ctrl: boolean;
  alt: boolean;
  shift: boolean;
  meta: boolean;
};

export type Pedals = Partial<Record<PedalAct, PedalKey>>;

/** Why a key is not taken for a pedal. */
export type PedalRefusal =
  /** It may stand in a length, or between its parts. */
  | 'length'
  /** It ends an entry, mends it or leaves it already. */
  | 'entry'
  /** Another act has it. */
  | 'taken'
  /** It says neither where it is nor what it prints. */
  | 'unknown';

/** Keys that are only half a chord: what follows them counts. */
const halves = new Set([
  'Shift',
  'Control',
  'Alt',
  'AltGraph',
  'Meta',
  'CapsLock',
  'NumLock',
  'Fn',
]);

/** Figures, marks, signs, strokes, the letters of mm, cm, um, in, thou, tenths and mil, and the space before them. */
const inLength =
  /^[\d.,+\-\u2212\u2013\u2044/"'\u2032\u2033\u00b5\u03bc\u00bc-\u00be\u2153-\u215e\s]$|^[mcuinthoesl]$/i;

const ofEntry = new Set(['Enter', 'Tab', 'Backspace', 'Escape', 'Delete', 'Home', 'End']);

/**
 * What a key pressed while a pedal is taught is worth: nothing yet, a refusal, or the key to keep.
 *
 * A chord with Ctrl, Alt or Meta is no part of a length, whatever its letter.
 */
export function pedalTaught(
  press: PedalKey,
  act: PedalAct,
  known: Pedals,
): 'wait' | { refused: PedalRefusal } | { taught: PedalKey } {
  if (halves.has(press.key)) return 'wait';
  if (press.code === '' && (press.key === '' || press.key === 'Unidentified')) {
    return { refused: 'unknown' };
  }
  const isChord = press.ctrl || press.alt || press.meta;
  if (!isChord && (inLength.test(press.key) || /^Numpad(?:\d|Add|Sub|Div|Dec)/.test(press.code))) {
    return { refused: 'length' };
  }
  if (!isChord && (ofEntry.has(press.key) || press.key.startsWith('Arrow')))
    return { refused: 'entry' };
  const other = pedalActs.find((one) => one !== act && isPedal(press, known[one]));
  if (other !== undefined) return { refused: 'taken' };
  return { taught: press };
}

/** The act of the pedal that sent a key; null where none did. */
export function pedalAct(press: PedalKey, known: Pedals): PedalAct | null {
  return pedalActs.find((act) => isPedal(press, known[act])) ?? null;
}

/** The same key by its place; by what it prints where a keyboard does not name its places. */
function isPedal(press: PedalKey, pedal: PedalKey | undefined): boolean {
  if (pedal === undefined) return false;
  const sameKeys =
    press.ctrl === pedal.ctrl &&
    press.alt === pedal.alt &&
    press.shift === pedal.shift &&
    press.meta === pedal.meta;
  const placed = press.code !== '' && pedal.code !== '';
  return sameKeys && (placed ? press.code === pedal.code : press.key === pedal.key);
}

/** The pedals this device was taught, from the text they are remembered as; none where that is broken. */
export function pedalsOf(word: string | null): Pedals {
  try {
    const found: unknown = JSON.parse(word ?? '{}');
    if (typeof found !== 'object' || found === null) return {};
    const known: Pedals = {};
    for (const act of pedalActs) {
      const key = (found as Record<string, unknown>)[act];
      if (isKey(key)) known[act] = key;
    }
    return known;
  } catch {
    return {};
  }
}

function isKey(key: unknown): key is PedalKey {
  if (typeof key !== 'object' || key === null) return false;
  const { code, key: name, ...held } = key as PedalKey;
  return (
    typeof code === 'string' &&
    typeof name === 'string' &&
    [held.ctrl, held.alt, held.shift, held.meta].every((one) => typeof one === 'boolean')
  );
}
