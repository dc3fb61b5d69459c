/** Every key of the Bench and what it does, in the order they are needed. */
export const benchKeys: readonly { keys: string; does: string }[] = [
  { keys: 'figures, signs', does: 'go to the entry, wherever you are' },
  { keys: 'Enter', does: 'logs; with nothing typed and all taken, goes on to the next' },
  { keys: 'Backspace', does: 'rubs out' },
  { keys: 'V', does: 'voids the last reading, or puts it back' },
  { keys: 'N, P', does: 'next or previous station' },
  {
    keys: 'Shift N, Shift P',
    does: 'next or previous in the order of measuring; Page Down and Page Up too',
  },
  { keys: 'F, Shift F', does: 'next or previous feature of this piece' },
  { keys: 'W, Shift W', does: 'the same feature on the next or previous workpiece' },
  { keys: 'arrows', does: 'move over the station map' },
  { keys: 'S', does: 'notes a spring pass' },
  { keys: 'L, *', does: 'only the last figures are typed, or whole sizes again' },
  { keys: 'D', does: 'what this device does: sound, letters, pedals, measuring unseen' },
  { keys: 'C', does: 'what to cut next; C again comes back' },
  { keys: '1, 2', does: 'answer a question in the entry' },
  { keys: 'Alt 1 to Alt 7', does: 'the other sheets' },
  { keys: 'Esc', does: 'closes a list' },
  { keys: '?', does: 'shows these' },
];
