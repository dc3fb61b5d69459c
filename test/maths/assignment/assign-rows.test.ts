import { describe, expect, it } from 'vitest';
import { assignRows } from '@/lib/maths/assignment/assign-rows';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';

describe('assignRows', () => {
  it('refuses more rows than columns and a start that does not fit', () => {
    const tall = costMatrix([[1], [2]]);
    const code = { code: 'assign-rows/shape' };
    expect(() => assignRows(tall)).toThrow(expect.objectContaining(code));
    const wide = costMatrix([[1, 2]]);
    expect(() => assignRows(wide, Float64Array.of(0, 0))).toThrow(expect.objectContaining(code));
    const square = costMatrix([[1]]);
    expect(() => assignRows(square, Float64Array.of(0, 0))).toThrow(expect.objectContaining(code));
  });

  it('refuses columns to begin with that do not exist or do not fit', () => {
    const square = costMatrix([
      [1, 2],
      [3, 4],
    ]);
    const begin =
      (...columns: number[]) =>
      () =>
        assignRows(square, {
          columnPrices: Float64Array.of(0, 0),
          columnOfRow: Int32Array.from(columns),
        });
    expect(begin(0, 2)).toThrow('a column that exists to begin with for each row, got 2');
    expect(begin(-1, 0)).toThrow('got -1');
    expect(begin(0)).toThrow(expect.objectContaining({ code: 'assign-rows/shape' }));
    expect(begin(0, 1)).not.toThrow();
  });

  it('takes the columns it is to begin with where none is cheaper, else the cheaper ones', () => {
    const alike = costMatrix([
      [5, 5, 5],
      [5, 5, 5],
      [5, 5, 5],
    ]);
    const columnPrices = new Float64Array(3);
    const begun = (matrix: typeof alike, ...columns: number[]) =>
      assignRows(matrix, { columnPrices, columnOfRow: Int32Array.from(columns) })!.columnOfRow;
    expect([...begun(alike, 2, 0, 1)]).toEqual([2, 0, 1]);
    const cheaper = costMatrix([
      [1, 5, 5],
      [5, 1, 5],
      [5, 5, 1],
    ]);
    expect([...begun(cheaper, 2, 0, 1)]).toEqual([0, 1, 2]);
  });

  it('answers undefined when some row has no column', () => {
    expect(
      assignRows(
        costMatrix([
          [1, null],
          [2, null],
        ]),
      ),
    ).toBeUndefined();
    expect(
      assignRows(
        costMatrix([
          [1, 2],
          [null, null],
        ]),
      ),
    ).toBeUndefined();
    expect(
      assignRows(
        costMatrix([
          [1, null, 4],
          [2, null, null],
          [1, null, 3],
        ]),
      ),
    ).toBeUndefined();
  });
});
