import type { Environment } from './environment';

const markKey = 'fw-device-seq';

/** Left free after a lost counter: the mark may be a few entries behind the last one sent. */
const afterLoss = 100;

/**
 * The running number of the next entry of this device: one more than the last.
 *
 * The counter lives in the database, in the transaction that writes the entry, so no number is taken without
 * its entry. A mark beside it (local storage, cookie) guards the case that the browser threw the database away
 * and the device's id was healed: a number used twice could never get into the book. After such a loss the
 * numbers jump, and the gap shows that something was lost.
 */
export function nextDeviceSeq(env: Pick<Environment, 'keepsakes'>, counter: unknown): number {
  const mark = marked(env);
  if (typeof counter === 'number') return Math.max(counter, mark) + 1;
  return mark === 0 ? 1 : mark + afterLoss;
}

/** Sets the mark, never back. */
export function rememberDeviceSeq(env: Pick<Environment, 'keepsakes'>, deviceSeq: number): void {
  const mark = String(Math.max(deviceSeq, marked(env)));
  for (const keepsake of env.keepsakes) {
    if (keepsake.read(markKey) !== mark) keepsake.write(markKey, mark);
  }
}

function marked({ keepsakes }: Pick<Environment, 'keepsakes'>): number {
  const marks = keepsakes.map(({ read }) => Number(read(markKey) ?? 0));
  return Math.max(0, ...marks.filter(Number.isSafeInteger));
}
