import type { Cut } from '@/lib/schema/fit';
import { um } from '../make';

/** A cut of the first piece, plain unless told otherwise; readings up to number `n * 10` came before it. */
export function aCut(n: number, over: Partial<Cut> = {}): Cut {
  return {
    id: `cut ${n}`,
    version: 1,
    createdAt: '2026-03-14T10:00:00Z',
    struckAt: null,
    jobId: 'job',
    pieceId: 'piece',
    featureId: 'feature',
    ordinal: n,
    lastReadingId: `reading ${n * 10}`,
    spring: false,
    askedPm: 200 * um,
    beforePm: 0,
    afterPm: null,
    tool: '',
    dial: 'radius',
    divisionPm: 10 * um,
    fineFeed: 1,
    ...over,
  };
}
