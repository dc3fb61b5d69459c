import { describe, expect, it } from 'vitest';
import type { Draft, Entry } from '@/lib/outbox/entry';
import { overlayEntries } from '@/lib/outbox/sheet-overlay';
import { applyChange } from '@/lib/outbox/sheet-reducer';
import { cut as cutShapes } from '@/lib/schema/fit';
import { runEvent as eventShapes } from '@/lib/schema/run';
import { Correction, Reading } from '@/lib/schema/reading';
import type { JobSheet } from '@/lib/schema/sheet';
import { changeOf, correctionRow, frozen, readingRow, sheetOf } from './sheet';
import { createWorld, keepMany, pass, quiet, voiding } from './world';

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

  it('puts cuts after the others of their piece and feature, whole, until the sheet has them', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const first = await tab.keep(cutting());
    const second = await tab.keep(cutting());
    await quiet();
    tab.kill();
    const { pieceId, featureId } = first.row as { pieceId: string; featureId: string };
    const known = { id: 'k', pieceId, featureId, ordinal: 3, version: 1 } as JobSheet['cuts'][0];
    const other = { id: 'o', pieceId: 'x', featureId, ordinal: 7 } as JobSheet['cuts'][0];
    const sheet = frozen(sheetOf({ cuts: [known, other] }));
    const laid = overlayEntries(sheet, frozen([second, first]));
    expect(laid.sheet.cuts.map(({ id, ordinal }) => [id, ordinal])).toEqual([
      ['k', 3],
      ['o', 7],
      [first.id, 4],
      [second.id, 5],
    ]);
    expect(cutShapes.Row.parse(laid.sheet.cuts[2])).toEqual(laid.sheet.cuts[2]);
    expect(laid.pending).toEqual(new Set([first.id, second.id]));
    expect(laid.sheet.readings).toBe(sheet.readings);
    const there = sheetOf({
      cuts: [
        { ...known, id: first.id },
        { ...known, id: second.id },
      ],
    });
    expect(overlayEntries(there, [first, second]).sheet).toBe(there);
  });

  it('lays events of runs over it, whole, with their moment in universal time', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const event = await tab.keep(happening());
    await quiet();
    tab.kill();
    const known = { id: 'k', runId: 'r', at: '2026-03-14T10:00:00Z' } as JobSheet['runEvents'][0];
    const sheet = frozen(sheetOf({ runEvents: [known] }));
    const laid = overlayEntries(sheet, frozen([event]));
    expect(laid.sheet.runEvents[0]).toBe(known);
    expect(laid.sheet.runEvents[1]).toMatchObject({
      id: event.id,
      kind: 'coolant',
      afterOrdinal: 8,
      at: new Date(event.row.deviceTime).toISOString(),
    });
    expect(eventShapes.Row.parse(laid.sheet.runEvents[1])).toEqual(laid.sheet.runEvents[1]);
    expect(laid.pending).toEqual(new Set([event.id]));
    expect(laid.sheet.cuts).toBe(sheet.cuts);
    const there = sheetOf({ runEvents: [{ ...known, id: event.id }] });
    expect(overlayEntries(there, [event]).sheet).toBe(there);
    const booked = { ...event, state: 'in the book' as const, seq: 4 };
    expect(overlayEntries(sheet, [booked]).pending.size).toBe(0);
  });

  it('shows a cut and an event as they were struck out or put back, until the sheet has the line that says it', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const cut = await tab.keep(cutting());
    const out = await tab.keep(striking('cut', cut.id));
    const back = await tab.keep(striking('runEvent', 'k', false));
    await quiet();
    tab.kill();
    const known = {
      id: 'k',
      runId: 'r',
      at: '2026-03-14T10:00:00Z',
      struckAt: '2026-03-14T11:00:00Z',
    } as JobSheet['runEvents'][0];
    const sheet = frozen(sheetOf({ seq: 40, runEvents: [known] }));
    const laid = overlayEntries(sheet, frozen([back, out, cut]));
    expect(laid.sheet.cuts).toMatchObject([{ id: cut.id, struckAt: out.row.deviceTime }]);
    expect(laid.sheet.runEvents).toEqual([{ ...known, struckAt: null }]);
    expect(laid.pending).toEqual(new Set([cut.id, out.id, back.id, 'k']));

    // Put back again on the device: the later of two holds, whatever order they come in.
    const again = { ...back, id: 'again', deviceSeq: 99, row: { ...back.row, struck: true } };
    expect(overlayEntries(sheet, [again as Entry, back]).sheet.runEvents).toBe(sheet.runEvents);

    // In the book as line 41: shown until the sheet stands at 41, and never after, whoever changes it then.
    const booked = inBook(back, 41);
    expect(overlayEntries(sheet, [booked]).sheet.runEvents).toMatchObject([{ struckAt: null }]);
    expect(overlayEntries(sheet, [booked]).pending.size).toBe(0);
    const later = sheetOf({ seq: 41, runEvents: [known] });
    expect(overlayEntries(later, [booked]).sheet).toBe(later);

    // Of a thing that is not there, and one put away, nothing is seen.
    expect(overlayEntries(sheet, [out]).sheet).toBe(sheet);
    expect(overlayEntries(sheet, [{ ...back, state: 'set aside' }]).sheet).toBe(sheet);
  });

  it('sends a cut before the entry that strikes it out', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const cut = await tab.keep(cutting());
    const out = await tab.keep(striking('cut', cut.id));
    const second = await tab.keep(cutting());
    world.book.broken = null;
    world.book.requests.length = 0;
    tab.sendNow();
    await pass(world, 5000);
    expect(world.book.requests.map(({ path, entries }) => [path, entries[0]!.id])).toEqual([
      ['/api/v1/cut-log', cut.id],
      ['/api/v1/strike-log', out.id],
      ['/api/v1/cut-log', second.id],
    ]);
    expect((await tab.copies()).map(({ state }) => state)).toEqual(Array(3).fill('in the book'));
    tab.kill();
  });

  it('sends an event to where events are kept', async () => {
    const world = createWorld();
    const tab = world.tab();
    const event = await tab.keep(happening());
    await pass(world, 5000);
    expect(world.book.requests.map(({ path, entries }) => [path, entries[0]!.id])).toEqual([
      ['/api/v1/event-log', event.id],
    ]);
    expect((await tab.copies()).map(({ state }) => state)).toEqual(['in the book']);
    tab.kill();
  });

  it('sends a cut to where cuts are kept, in the order of the running numbers', async () => {
    const world = createWorld();
    world.book.broken = 'no network';
    const tab = world.tab();
    const [before] = await keepMany(tab, 1);
    const cut = await tab.keep(cutting());
    const [after] = await keepMany(tab, 1);
    world.book.broken = null;
    world.book.requests.length = 0;
    tab.sendNow();
    await pass(world, 5000);
    expect(world.book.requests.map(({ path, entries }) => [path, entries[0]!.id])).toEqual([
      ['/api/v1/readings', before!.id],
      ['/api/v1/cut-log', cut.id],
      ['/api/v1/readings', after!.id],
    ]);
    expect((await tab.copies()).map(({ state }) => state)).toEqual(Array(3).fill('in the book'));
    tab.kill();
  });
});

function striking(
  thing: 'cut' | 'runEvent',
  thingId: string,
  struck = true,
): Draft & { kind: 'strike' } {
  const row = { personId: null, thing, thingId, struck };
  return { kind: 'strike', jobId: sheetOf().job.id, row };
}

function happening(): Draft & { kind: 'event' } {
  return {
    kind: 'event',
    jobId: sheetOf().job.id,
    row: {
      personId: null,
      runId: '0195920c-0000-7000-8004-000000000001',
      afterOrdinal: 8,
      kind: 'coolant',
      note: '',
      offsetPm: null,
      offsetDial: null,
    },
  };
}

function cutting(): Draft & { kind: 'cut' } {
  return {
    kind: 'cut',
    jobId: sheetOf().job.id,
    row: {
      personId: null,
      pieceId: '0195920c-0000-7000-8002-000000000001',
      featureId: '0195920c-0000-7000-8003-000000000001',
      lastReadingId: null,
      spring: false,
      askedPm: 40_000_000,
      beforePm: 18_086_000_000,
      tool: '',
    },
  };
}
