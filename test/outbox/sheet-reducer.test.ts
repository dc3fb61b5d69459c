import { describe, expect, it } from 'vitest';
import { applyChange } from '@/lib/outbox/sheet-reducer';
import { thingKinds } from '@/lib/schema/change';
import type { JobSheet } from '@/lib/schema/sheet';
import { changeOf, correctionRow, frozen, readingRow, sheetOf } from './sheet';

const ids = (rows: readonly { id: string }[]) => rows.map(({ id }) => id);

describe('applyChange', () => {
  it.each([
    ['part', 'parts'],
    ['piece', 'pieces'],
    ['feature', 'features'],
    ['gauge', 'gauges'],
    ['person', 'people'],
    ['fit', 'fits'],
    ['pair', 'pairs'],
    ['cut', 'cuts'],
    ['run', 'runs'],
    ['runEvent', 'runEvents'],
    ['departure', 'departures'],
    ['picture', 'pictures'],
  ] as const)('puts a new %s last in %s', (thing, list) => {
    const sheet = frozen(sheetOf());
    const after = { id: 'new', version: 1 };
    const next = applyChange(sheet, changeOf(11, thing, after, { act: 'made' }));
    expect(ids(next[list])).toEqual([...ids(sheet[list]), 'new']);
    expect(next.seq).toBe(11);
    const others = { ...next, [list]: sheet[list], seq: sheet.seq };
    expect(others).toEqual(sheet);
  });

  it('knows every kind of thing there is', () => {
    const sheet = frozen(sheetOf());
    for (const thing of thingKinds) {
      expect(() => applyChange(sheet, changeOf(11, thing, { id: 'x', version: 1 }))).not.toThrow();
    }
  });

  it('puts a changed thing where it was and leaves the others as they are', () => {
    const pieces = [1, 2, 3].map((n) => ({ id: `p${n}`, version: 1, mark: `L${n}` }));
    const sheet = frozen(sheetOf({ pieces: pieces as JobSheet['pieces'] }));
    const after = { id: 'p2', version: 2, mark: 'L2b' };
    const next = applyChange(sheet, changeOf(11, 'piece', after));
    expect(next.pieces).toEqual([pieces[0], after, pieces[2]]);
    expect(next.pieces[0]).toBe(sheet.pieces[0]);
    expect(next.fits).toBe(sheet.fits);
  });

  it('keeps a struck thing, with when it was struck', () => {
    const after = { id: 'piece-1', version: 3, struckAt: '2026-11-25T09:00:00.000Z' };
    const next = applyChange(sheetOf(), changeOf(11, 'piece', after, { act: 'struck' }));
    expect(next.pieces).toEqual([after]);
  });

  it('does not put an older version over a newer one', () => {
    const sheet = frozen(sheetOf());
    const older = { id: 'piece-1', version: 1, mark: 'old' };
    const next = applyChange(sheet, changeOf(11, 'piece', older));
    expect(next.pieces).toBe(sheet.pieces);
    expect(next.seq).toBe(11);
  });

  it('changes the job itself', () => {
    const after = { id: sheetOf().job.id, version: 2, name: 'Boiler' };
    expect(applyChange(sheetOf(), changeOf(11, 'job', after)).job).toEqual(after);
  });

  it('adds a reading and a correction once each', () => {
    const sheet = sheetOf({ readings: [readingRow('a', 1)] });
    const b = changeOf(11, 'reading', readingRow('b', 2), { act: 'kept' });
    const c = changeOf(12, 'correction', correctionRow('c', 1), { act: 'kept' });
    const next = [b, c, { ...b, seq: 13 }, { ...c, seq: 14 }].reduce(applyChange, sheet);
    expect(ids(next.readings)).toEqual(['a', 'b']);
    expect(ids(next.corrections)).toEqual(['c']);
    expect(next.seq).toBe(14);
  });

  it('puts a reading where its number in the book says', () => {
    const sheet = sheetOf({ readings: [readingRow('a', 1), readingRow('d', 4)] });
    const late = changeOf(11, 'reading', readingRow('c', 3));
    const first = changeOf(12, 'reading', readingRow('z', 0));
    const last = changeOf(13, 'reading', readingRow('e', 5));
    const next = [late, first, last].reduce(applyChange, sheet);
    expect(ids(next.readings)).toEqual(['z', 'a', 'c', 'd', 'e']);
  });

  it.each([
    ['the sheet is true at already', changeOf(10, 'piece', { id: 'piece-1', version: 9 })],
    ['of another job', changeOf(11, 'piece', { id: 'p', version: 1 }, { jobId: 'other' })],
    ['to a setting', changeOf(11, 'setting', { id: 'shop', version: 2 }, { jobId: null })],
    ['without a row', changeOf(11, 'piece', {})],
  ])('gives the same sheet back for a change %s', (_, change) => {
    const sheet = frozen(sheetOf());
    expect(applyChange(sheet, change)).toBe(sheet);
  });

  it('takes gauges and people, which belong to the shop and to no job', () => {
    const gauge = changeOf(11, 'gauge', { id: 'g', version: 1 }, { jobId: null });
    expect(ids(applyChange(sheetOf(), gauge).gauges)).toEqual(['g']);
  });
});
