import { describe, expect, it } from 'vitest';
import type { Entry } from '@/lib/outbox/entry';
import { createNoticeBoard } from '@/lib/outbox/notice-board';
import { emptySnapshot, entriesFor } from '@/lib/outbox/snapshot';

const entry = (deviceSeq: number, state: Entry['state'], revision = 1) =>
  ({ id: `e${deviceSeq}`, jobId: 'job', deviceSeq, state, revision }) as Entry;

describe('the notice board', () => {
  it('begins empty and not ready', () => {
    expect(createNoticeBoard().snapshot()).toBe(emptySnapshot);
  });

  it('counts what is on this device only, and shows the tray apart', () => {
    const board = createNoticeBoard();
    board.merge([
      entry(4, 'on this device'),
      entry(3, 'needs a look'),
      entry(2, 'in the book'),
      entry(1, 'on this device'),
      entry(5, 'set aside'),
    ]);
    const { unsent, tray } = board.snapshot();
    expect([unsent, tray.map(({ id }) => id)]).toEqual([2, ['e3']]);
    const shown = entriesFor(board.snapshot(), 'job').map(({ id }) => id);
    expect(shown).toEqual(['e1', 'e2', 'e3', 'e4']);
    expect(board.waitingIds().sort()).toEqual(['e1', 'e3', 'e4']);
  });

  it('takes the newer of two copies of a row, in whatever order they come', () => {
    const board = createNoticeBoard();
    board.merge([entry(1, 'in the book', 2)]);
    const before = board.snapshot();
    board.merge([entry(1, 'on this device', 1)]);
    expect(board.snapshot()).toBe(before);
    board.merge([entry(1, 'needs a look', 3)]);
    expect(board.snapshot().tray).toHaveLength(1);
  });

  it('keeps the same tray while other entries come and go', () => {
    const board = createNoticeBoard();
    board.merge([entry(1, 'needs a look')]);
    const { tray } = board.snapshot();
    board.merge([entry(2, 'on this device')]);
    expect(board.snapshot().tray).toBe(tray);
    board.merge([entry(1, 'set aside', 2)]);
    expect(board.snapshot().tray).toEqual([]);
  });

  it('forgets the oldest of those in the book, and never one that is not', () => {
    const board = createNoticeBoard();
    board.merge([entry(1, 'on this device')]);
    for (let i = 2; i <= 1102; i += 1) board.merge([entry(i, 'in the book')]);
    const shown = entriesFor(board.snapshot(), 'job');
    expect(shown).toHaveLength(1001);
    expect(shown.slice(0, 2).map(({ id }) => id)).toEqual(['e1', 'e103']);
  });

  it('counts as oldest what got into the book first, not what was kept first', () => {
    const board = createNoticeBoard();
    board.merge([entry(1, 'on this device')]);
    for (let i = 2; i <= 1001; i += 1) board.merge([entry(i, 'in the book')]);
    board.merge([entry(1, 'in the book', 2)]);
    const shown = entriesFor(board.snapshot(), 'job').map(({ id }) => id);
    expect([shown.includes('e1'), shown.includes('e2')]).toEqual([true, false]);
  });

  it('tells nobody when nothing is new', () => {
    const board = createNoticeBoard();
    let told = 0;
    board.subscribe(() => (told += 1));
    board.set({ skewMs: 5 });
    board.set({ skewMs: 5, trouble: null });
    board.merge([]);
    expect(told).toBe(1);
  });

  it('calls the clock off above two minutes either way', () => {
    const board = createNoticeBoard();
    const off = (skewMs: number | null) => {
      board.set({ skewMs });
      return board.snapshot().clockOff;
    };
    expect([120_000, 120_001, -120_000, -120_001, null].map(off)).toEqual([
      false,
      true,
      false,
      true,
      false,
    ]);
  });
});
