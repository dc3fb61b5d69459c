import { describe, expect, it } from 'vitest';
import type { Entry } from '@/lib/outbox/entry';
import { overlayEntries } from '@/lib/outbox/sheet-overlay';
import { applyChange } from '@/lib/outbox/sheet-reducer';
import { Correction, Reading } from '@/lib/schema/reading';
import { changeOf, correctionRow, frozen, readingRow, sheetOf } from './sheet';
import { createWorld, keepMany, quiet, voiding } from './world';

/** Three readings and a correction as kept without a network. */
async function unsent(): Promise<Entry[]> {
  const world = createWorld();
  world.book.broken = 'no network';
  const tab = world.tab();
  const readings = await keepMany(tab, 3);
  const strike = await tab.keep(voiding(readings[0]!.id));
  await quiet();
  tab.kill();
  return frozen([...readings, strike]);
}
const inBook = (entry: Entry, seq: number): Entry => ({
  ...entry,
  state: 'in the book',
  seq,
  receivedAt: '2026-11-25T09:00:01.000Z',
});

describe('overlayEntries', () => {
  it('puts unsent entries after all others, in the order of their running numbers, and names them', async () => {
    const entries = await unsent();
    const sheet = frozen(
      sheetOf({
        readings: [readingRow('a', 41), readingRow('b', 57)],
        corrections: [correctionRow('c', 8)],
      }),
    );
    const laid = overlayEntries(sheet, [...entries].reverse());
    expect(laid.sheet.readings.map(({ id, seq }) => [id, seq])).toEqual([
      ['a', 41],
      ['b', 57],
      [entries[0]!.id, 58],
      [entries[1]!.id, 59],
      [entries[2]!.id, 60],
    ]);
    expect(laid.sheet.corrections.map(({ id, seq }) => [id, seq])).toEqual([
      ['c', 8],
      [entries[3]!.id, 9],
    ]);
    expect(laid.pending).toEqual(new Set(entries.map(({ id }) => id)));
  });

  it('makes whole rows of them, received when the device kept them for want of better', async () => {
    const entries = await unsent();
    const { sheet } = overlayEntries(sheetOf(), entries);
    sheet.readings.forEach((row) => expect(Reading.parse(row)).toEqual(row));
    sheet.corrections.forEach((row) => expect(Correction.parse(row)).toEqual(row));
    expect(sheet.readings[0]).toMatchObject({
      deviceId: entries[0]!.deviceId,
      receivedAt: entries[0]!.row.deviceTime,
    });
  });

  it('shows an entry that is in the book but not on the sheet yet, with its own number, as not pending', async () => {
    const [first, second] = await unsent();
    const sheet = sheetOf({ readings: [readingRow('a', 1), readingRow('z', 90)] });
    const laid = overlayEntries(sheet, [inBook(first!, 40), second!]);
    expect(laid.sheet.readings.map(({ id, seq }) => [id, seq])).toEqual([
      ['a', 1],
      [first!.id, 40],
      ['z', 90],
      [second!.id, 91],
    ]);
    expect(laid.sheet.readings[1]!.receivedAt).toBe('2026-11-25T09:00:01.000Z');
    expect(laid.pending).toEqual(new Set([second!.id]));
  });

  it('never shows an entry twice, nor lets it vanish, on its way into the book', async () => {
    const [entry] = await unsent();
    const change = changeOf(11, 'reading', readingRow(entry!.id, 1), { act: 'kept' });
    const before = sheetOf();
    const after = applyChange(before, change);
    for (const sheet of [before, after]) {
      for (const state of [entry!, inBook(entry!, 1)]) {
        const laid = overlayEntries(sheet, [state]);
        expect(laid.sheet.readings.map(({ id }) => id)).toEqual([entry!.id]);
      }
    }
  });

  it('shows what needs a look as pending, and not what was set aside', async () => {
    const [first, second] = await unsent();
    const refusal = { code: 'no-piece', at: 'pieceId', says: 'no such piece' };
    const laid = overlayEntries(sheetOf(), [
      { ...first!, state: 'needs a look', refusal },
      { ...second!, state: 'set aside', refusal },
    ]);
    expect(laid.sheet.readings.map(({ id }) => id)).toEqual([first!.id]);
    expect(laid.pending).toEqual(new Set([first!.id]));
  });

  it('gives the same sheet back when there is nothing to lay over it', async () => {
    const [entry] = await unsent();
    const sheet = frozen(sheetOf({ readings: [readingRow(entry!.id, 1)] }));
    expect(overlayEntries(sheet, []).sheet).toBe(sheet);
    expect(overlayEntries(sheet, [entry!]).sheet).toBe(sheet);
    expect(overlayEntries(sheet, [{ ...entry!, id: 'x', jobId: 'other' }]).sheet).toBe(sheet);
    expect(overlayEntries(sheet, []).pending).toBe(overlayEntries(sheet, [entry!]).pending);
  });
});
