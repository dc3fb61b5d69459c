import { pairRow } from '@/lib/rules/pair-row';
import { pairsInTheWay } from '@/lib/rules/pairs-in-the-way';
import type { Pair } from '@/lib/schema/fit';
import { uuidv7 } from '@/lib/outbox/ids';

type Things = {
  make: (kind: 'pair', body: Record<string, unknown> & { id: string }) => Promise<boolean>;
  change: (
    kind: 'pair',
    id: string,
    body: { version: number } & Record<string, unknown>,
  ) => Promise<boolean>;
};

type Two = { internalPieceId: string; externalPieceId: string };

/** Writes a decision on two pieces of a fit where it belongs: on their row, or on one of its own. True once kept. */
export function decidePair(
  { make, change }: Things,
  pairs: readonly Pair[],
  fit: { id: string; jobId: string },
  { internalPieceId, externalPieceId }: Two,
  fields: Record<string, unknown>,
): Promise<boolean> {
  const row = pairRow(pairs, fit.id, internalPieceId, externalPieceId);
  if (row !== undefined) return change('pair', row.id, { version: row.version, ...fields });
  return make('pair', {
    id: uuidv7(),
    jobId: fit.jobId,
    fitId: fit.id,
    internalPieceId,
    externalPieceId,
    mark: '',
    clearancePm: null,
    uncertaintyPm: null,
    ...fields,
  });
}

/**
 * Keeps two pieces together that may be locked to others: those locks are let go first. False where one could
 * not be, or where a piece is in a final pair with another, which a person must undo first.
 */
export async function tiePair(
  things: Things,
  pairs: readonly Pair[],
  fit: { id: string; jobId: string },
  two: Two,
  who: { decidedAt: string; personId: string | null },
): Promise<boolean> {
  const { final, locked } = pairsInTheWay(pairs, fit.id, two.internalPieceId, two.externalPieceId);
  if (final !== null) return false;
  for (const { id, version } of locked) {
    if (!(await things.change('pair', id, { version, state: 'undone', ...who }))) return false;
  }
  return decidePair(things, pairs, fit, two, { state: 'locked', ...who });
}
