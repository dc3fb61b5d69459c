import type { Correction, Reading } from '@/lib/schema/reading';

export const um = 1_000_000;
export const mm = 1_000_000_000;

/** A reading in the book, plain unless told otherwise. Sequence and id follow `n`. */
export function readingOf(n: number, over: Partial<Reading> = {}): Reading {
  return {
    id: `reading ${n}`,
    seq: n,
    jobId: 'job',
    pieceId: 'piece',
    featureId: 'feature',
    gaugeId: 'mic',
    personId: null,
    station: 'middle',
    direction: 'A',
    text: '18.000',
    unit: 'mm',
    valuePm: 18 * mm,
    resolutionPm: um,
    temperatureMilliC: null,
    heldAs: null,
    deviceTime: '2026-03-14T10:00:00Z',
    deviceSeq: n,
    deviceId: 'device',
    receivedAt: '2026-03-14T10:00:00Z',
    ...over,
  };
}

/** A correction in the book that names reading `n`. */
export function correctionOf(
  n: number,
  over: Partial<Correction> & Pick<Correction, 'kind'>,
): Correction {
  return {
    id: `correction of ${n}`,
    seq: 1000 + n,
    jobId: 'job',
    readingId: `reading ${n}`,
    reason: '',
    toPieceId: null,
    toFeatureId: null,
    toStation: null,
    toDirection: null,
    text: null,
    unit: null,
    valuePm: null,
    resolutionPm: null,
    personId: null,
    deviceTime: '2026-03-14T10:00:00Z',
    deviceSeq: 1000 + n,
    deviceId: 'device',
    receivedAt: '2026-03-14T10:00:00Z',
    ...over,
  };
}
