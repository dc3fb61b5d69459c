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
