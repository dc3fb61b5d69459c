import { expect, it } from 'vitest';
import { readAtWords } from '@/lib/text/read-at';
import { dayAndTime, timeOf } from '@/lib/text/when';

const at = '2026-03-14T12:00:00Z';
const now = new Date('2026-03-14T12:30:00Z');

it('is the time of the device alone where the book had it at once, or has not got it', () => {
  expect(readAtWords(at, null, now)).toBe(timeOf(at));
  expect(readAtWords(at, '2026-03-14T12:02:00Z', now)).toBe(timeOf(at));
  expect(readAtWords(at, '2026-03-14T11:58:00Z', now)).toBe(timeOf(at));
});

it('names both times where a clock is off, ahead or behind, or the network was away', () => {
  for (const receivedAt of ['2026-03-14T11:57:59Z', '2026-03-14T12:02:01Z']) {
    const both = `${timeOf(at)}, in the book ${timeOf(receivedAt)}`;
    expect(readAtWords(at, receivedAt, now)).toBe(both);
  }
});

it('says the day where it is another', () => {
  const later = new Date('2026-03-18T12:00:00Z');
  expect(readAtWords(at, null, later)).toBe(dayAndTime(at));
  const nextDay = '2026-03-16T12:00:00Z';
  expect(readAtWords(at, nextDay, later)).toBe(
    `${dayAndTime(at)}, in the book ${dayAndTime(nextDay)}`,
  );
  expect(readAtWords(at, '2026-03-14T12:20:00Z', later)).toBe(
    `${dayAndTime(at)}, in the book ${timeOf('2026-03-14T12:20:00Z')}`,
  );
});
