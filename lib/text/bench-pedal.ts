/** What a pedal does, for the list of this device. */
export const pedalNames = {
  commit: 'Log, or measure again',
  next: 'Next',
  'take back': 'Take back',
} as const;

export const pedalWords = {
  teach: 'Teach',
  wait: 'Press the pedal now.',
  cancel: 'Leave it',
  forget: 'Forget the pedals',
  none: 'no pedal',
} as const;

/** How a taught key is named: "F13", "Page Down", "Ctrl and B". */
export function pedalKeyWords(pedal: {
  code: string;
  key: string;
  ctrl: boolean;
  alt: boolean;
  shift: boolean;
  meta: boolean;
}): string {
  const plain = pedal.key.length === 1 ? pedal.key.toUpperCase() : pedal.key;
  const name = (plain === '' || plain === 'Unidentified' ? pedal.code : plain).replace(
    /([a-z])([A-Z])/g,
    '$1 $2',
  );
  const held = [
    pedal.ctrl ? 'Ctrl' : '',
    pedal.alt ? 'Alt' : '',
    pedal.shift ? 'Shift' : '',
    pedal.meta ? 'Meta' : '',
  ].filter((word) => word !== '');
  return [...held, name].join(' and ');
}

/** Why a key is not taken for a pedal, and what to do. */
export function pedalRefusalWords(
  why: 'length' | 'entry' | 'taken' | 'unknown',
  key: string,
): string {
  const name = key === ' ' ? 'Space' : key.length === 1 ? `"${key}"` : key;
  switch (why) {
    case 'length':
      return `${name} belongs to a length. Set the pedal to another key, such as F13, and press it again.`;
    case 'entry':
      return `${name} has its own work in the entry. Set the pedal to another key, such as F13, and press it again.`;
    case 'taken':
      return `${name} is taught for another pedal. Press the other one, or forget them all.`;
    case 'unknown':
      return 'This pedal does not say which key it is. Set it to another, such as F13, and press it again.';
  }
}
