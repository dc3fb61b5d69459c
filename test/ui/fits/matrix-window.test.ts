import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeAfter } from '@/app/ui/fits/matrix-keys';
import { drawnOf, matrixWindow } from '@/app/ui/fits/matrix-window';

describe('matrixWindow', () => {
  const table = { cellPx: 40, count: 200, block: 6 };

  it('draws what is in view and a block beyond, in whole blocks', () => {
    // Rows 50 to 66 are in view: blocks 48 to 72, and one more at each end.
    expect(matrixWindow({ scrollPx: 2000, viewPx: 640 }, table)).toEqual({ from: 42, to: 72 });
    expect(matrixWindow({ scrollPx: 0, viewPx: 640 }, table)).toEqual({ from: 0, to: 24 });
  });

  it('changes nothing while one scrolls within a block', () => {
    const at = (scrollPx: number) => matrixWindow({ scrollPx, viewPx: 640 }, table);
    expect(at(1925)).toEqual(at(2000));
  });

  it('always draws every row in view, and none that is not there', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -200, max: 9000 }),
        fc.integer({ min: 0, max: 1200 }),
        fc.integer({ min: 0, max: 220 }),
        (scrollPx, viewPx, count) => {
          const { from, to } = matrixWindow({ scrollPx, viewPx }, { ...table, count });
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(count);
          for (let row = 0; row < count; row += 1) {
            const top = row * 40;
            const isSeen = top + 40 > Math.max(0, scrollPx) && top < Math.max(0, scrollPx) + viewPx;
            if (isSeen) expect(row >= from && row < to).toBe(true);
          }
        },
      ),
    );
  });
});

describe('drawnOf', () => {
  it('keeps the row that has the focus, however far one has scrolled from it', () => {
    expect(drawnOf({ from: 10, to: 13 }, 2, 200)).toEqual([2, 10, 11, 12]);
    expect(drawnOf({ from: 10, to: 13 }, 11, 200)).toEqual([10, 11, 12]);
    expect(drawnOf({ from: 10, to: 13 }, 150, 200)).toEqual([10, 11, 12, 150]);
    expect(drawnOf({ from: 0, to: 24 }, 30, 8)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(drawnOf({ from: 10, to: 13 }, -1, 200)).toEqual([10, 11, 12]);
  });
});

describe('placeAfter', () => {
  const table = { rows: 8, columns: 6, page: 5 };
  const after = (row: number, column: number, key: string, ctrl = false) =>
    placeAfter({ row, column }, key, ctrl, table);

  it.each([
    ['ArrowDown', 3, 2, 4, 2],
    ['ArrowUp', 3, 2, 2, 2],
    ['ArrowRight', 3, 2, 3, 3],
    ['ArrowLeft', 3, 2, 3, 1],
    ['Home', 3, 2, 3, 0],
    ['End', 3, 2, 3, 5],
    ['PageDown', 1, 2, 6, 2],
    ['PageUp', 6, 2, 1, 2],
    // At the edges: to the heads, and no further.
    ['ArrowUp', 0, 2, -1, 2],
    ['ArrowUp', -1, 2, -1, 2],
    ['ArrowLeft', 3, 0, 3, -1],
    ['ArrowLeft', 3, -1, 3, -1],
    ['ArrowDown', 7, 2, 7, 2],
    ['ArrowRight', 3, 5, 3, 5],
    ['PageUp', 2, 2, 0, 2],
    ['PageUp', -1, 2, -1, 2],
    ['PageDown', 6, 2, 7, 2],
    // The corner is no cell.
    ['ArrowUp', 0, -1, 0, -1],
    ['ArrowLeft', -1, 0, -1, 0],
  ])('takes %s from %i, %i to %i, %i', (key, row, column, toRow, toColumn) => {
    expect(after(row, column, key)).toEqual({ row: toRow, column: toColumn });
  });

  it('goes to the ends of the table with Ctrl', () => {
    expect(after(3, 2, 'Home', true)).toEqual({ row: 0, column: 0 });
    expect(after(3, 2, 'End', true)).toEqual({ row: 7, column: 5 });
  });

  it('leaves every other key alone', () => {
    expect(after(3, 2, 'a')).toBeNull();
    expect(after(3, 2, 'Tab')).toBeNull();
  });
});
