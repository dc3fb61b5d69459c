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
  const mark = Math.max(0, ...marked(env));
  if (typeof counter === 'number') return Math.max(counter, mark) + 1;
  return mark === 0 ? 1 : mark + afterLoss;
}

/** Sets the mark, never back. */
export function rememberDeviceSeq(env: Pick<Environment, 'keepsakes'>, deviceSeq: number): void {
  const marks = marked(env);
  const mark = Math.max(deviceSeq, ...marks);
  env.keepsakes.forEach((keepsake, index) => {
    if (marks[index] !== mark) keepsake.write(markKey, String(mark));
  });
}

/** Of each keepsake; 0 where it knows none. */
function marked({ keepsakes }: Pick<Environment, 'keepsakes'>): number[] {
  return keepsakes.map(({ read }) => {
    const mark = Number(read(markKey) ?? 0);
    return Number.isSafeInteger(mark) ? mark : 0;
  });
}
