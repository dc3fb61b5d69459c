import type { RunEvent } from '@/lib/schema/run';
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

/** An event as the chart names it: what it was, and when with its remark. */
export function eventWords(event: Pick<RunEvent, 'kind' | 'note' | 'at'>): {
  title: string;
  note: string;
} {
  return {
    title: titles[event.kind],
    note: [event.at === '' ? '' : timeOf(event.at), event.note].filter(Boolean).join(', '),
  };
}
