import type { RunEvent } from '@/lib/schema/run';
import { offsetAmount } from './offset-amount';
import type { Shown } from './shown-size';
import { timeOf } from './when';

const titles: Record<RunEvent['kind'], string> = {
  'insert changed': 'Insert changed',
  'offset moved': 'Offset moved',
  coolant: 'Coolant',
  'warm-up': 'Warm-up',
  break: 'Break',
  're-chucked': 'Re-chucked',
  other: 'Event',
};

/** Every kind of event, in the order they are offered. */
export const eventKinds = Object.keys(titles) as RunEvent['kind'][];

/** The disk of this device would not take it. */
export const eventTroubleWords =
  'The event could not be kept on this device. Make room, then note it again.';

/** Beside an event that is on this device only. */
export const eventToSend = 'to send';

/**
 * An event as the chart names it: what it was, and when with its remark. Told how lengths are shown, an
 * offset says how far it was moved, on diameter, and on which dial.
 */
export function eventWords(
  event: Pick<RunEvent, 'kind' | 'note' | 'at'> &
    Partial<Pick<RunEvent, 'offsetPm' | 'offsetDial'>>,
  shown?: Shown,
): {
  title: string;
  note: string;
} {
  const { kind, note, at, offsetPm, offsetDial } = event;
  const amount =
    shown === undefined || kind !== 'offset moved' || offsetPm === null || offsetPm === undefined
      ? null
      : { pm: offsetPm, shown };
  return {
    title:
      amount === null ? titles[kind] : `${titles[kind]} ${offsetAmount(amount.pm, amount.shown)}`,
    note: [
      at === '' ? '' : timeOf(at),
      amount === null ? '' : dialWords(amount.pm, offsetDial ?? null, amount.shown),
      note,
    ]
      .filter(Boolean)
      .join(', '),
  };
}

/** "-0.010 on the radius dial"; nothing for a dial that counts the diameter, or none said. */
function dialWords(pm: number, dial: RunEvent['offsetDial'], shown: Shown): string {
  if (dial !== 'radius') return '';
  return `${offsetAmount(Math.round(pm / 2), shown)} on the radius dial`;
}
