/**
 * What stands in the way of keeping or of sending, and what to do; empty for a code without words.
 *
 * A missing network needs no words here: the head says how many are to send.
 */
export function troubleWords(code: string | null): string {
  return code === null ? '' : (words[code] ?? '');
}

/** What is said of a reading the device could not keep. It stays on screen and is not lost by that. */
export function notKeptWords(code: string): string {
  const reason = troubleWords(code) || 'This device could not keep it.';
  return `Not kept. ${reason} It stands here until it is; keep it again.`;
}

/** Of readings that came late, taken before a cut that another device noted. */
export function beforeCutWords(figures: readonly string[]): string {
  const clocks = 'read before the last cut, by the clocks of the two devices, and';
  if (figures.length === 1) {
    return `${figures[0]} was ${clocks} counts for the new size. Strike it out if it tells the old one.`;
  }
  const all = `${figures.slice(0, -1).join(', ')} and ${figures.at(-1)}`;
  return `${all} were ${clocks} count for the new size. Strike out those that tell the old one.`;
}

const words: Record<string, string> = {
  'outbox/storage-full': 'This device has no room left. Make room on it.',
  'outbox/storage-lost': 'This browser lost hold of its storage. Open this page again if it lasts.',
  'outbox/blocked': 'An older page of Fitwright is open here. Close it.',
  'outbox/old-tab': 'This page is older than another one open here. Load it again.',
  'outbox/sign-in': 'Sign in again. Readings are kept here until then.',
  'outbox/not-allowed': 'The notebook does not let this device write. Readings are kept here.',
  'outbox/server': 'The notebook could not keep what was sent. It is kept here and sent again.',
  'outbox/not-understood':
    'The notebook answered strangely. Readings are kept here and sent again.',
};
