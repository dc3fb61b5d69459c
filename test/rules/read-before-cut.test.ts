import { expect, it } from 'vitest';
import { readBeforeCut } from '@/lib/rules/read-before-cut';
import { standing } from '@/lib/rules/standing';
import type { Cut } from '@/lib/schema/fit';
import type { Reading } from '@/lib/schema/reading';
import { correctionOf, readingOf } from './make';

const cutAt = '2026-03-14T10:20:00+01:00';
const cut = {
  id: 'cut',
  pieceId: 'piece',
  featureId: 'feature',
  ordinal: 2,
  deviceId: 'device',
  deviceTime: cutAt,
  struckAt: null,
} as Cut;
const late: Partial<Reading> = { deviceId: 'phone', deviceTime: '2026-03-14T09:19:59Z' };

function found(
  readings: Reading[],
  cuts: Cut[] = [cut],
  corrections = [correctionOf(9, { kind: 'void' })],
) {
  const cell = {
    pieceId: 'piece',
    featureId: 'feature',
    readings: standing(readings, corrections),
  };
  return readBeforeCut({ readings, cuts }, cell).map(({ id }) => id);
}

it('finds what another device took before the cut and sent after it', () => {
  expect(found([readingOf(1, late), readingOf(2)])).toEqual(['reading 1']);
});

it.each<[string, Partial<Reading>]>([
  ['taken in the moment of the cut', { deviceTime: '2026-03-14T09:20:00Z' }],
  ['taken after it', { deviceTime: '2026-03-14T09:21:00Z' }],
  ['of the device that noted the cut, whose clock was put back since', { deviceId: 'device' }],
])('leaves alone what was %s', (_, over) => {
  expect(found([readingOf(1, { ...late, ...over })])).toEqual([]);
});

it('leaves alone what is struck out', () => {
  expect(found([readingOf(9, late)])).toEqual([]);
});

it.each<[string, Partial<Cut>]>([
  ['struck out', { struckAt: '2026-03-14T11:00:00Z' }],
  ['of another piece', { pieceId: 'other' }],
  ['of another feature', { featureId: 'other' }],
  ['noted by nobody who had a clock', { deviceTime: null }],
])('holds nothing against a cut that is %s', (_, over) => {
  expect(found([readingOf(1, late)], [{ ...cut, ...over }])).toEqual([]);
});

it('holds it against the cut noted last, whatever the order of the rows', () => {
  const earlier = { ...cut, id: 'first', ordinal: 1, deviceTime: '2026-03-14T09:00:00Z' };
  expect(found([readingOf(1, late)], [cut, earlier])).toEqual(['reading 1']);
  expect(found([readingOf(1, late)], [{ ...earlier, ordinal: 3 }, cut])).toEqual([]);
});
