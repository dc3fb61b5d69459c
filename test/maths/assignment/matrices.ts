import * as fc from 'fast-check';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';

// Small spreads make many ties, and about a third of the pairs is forbidden.
const cell = fc.oneof(
  { weight: 2, arbitrary: fc.integer({ min: -9, max: 9 }) },
  { weight: 1, arbitrary: fc.constant(null) },
);

/** Cost matrices up to `max` by `max` for property tests. */
export function matrices(max: number, of: fc.Arbitrary<number | null> = cell) {
  return fc
    .tuple(fc.integer({ min: 1, max }), fc.integer({ min: 1, max }))
    .chain(([rows, columns]) =>
      fc.array(fc.array(of, { minLength: columns, maxLength: columns }), {
        minLength: rows,
        maxLength: rows,
      }),
    )
    .map(costMatrix);
}
