import { describe, expect, it } from 'vitest';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';

describe('costMatrix', () => {
  it.each([
    ['cost-matrix/shape', []],
    ['cost-matrix/shape', [[]]],
    ['cost-matrix/shape', [[1, 2], [3]]],
    ['cost-matrix/cost', [[Infinity]]],
    ['cost-matrix/cost', [[NaN]]],
  ])('refuses by %s', (code, rows) => {
    expect(() => costMatrix(rows)).toThrow(expect.objectContaining({ code }));
  });
});
