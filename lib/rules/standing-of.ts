import type { Correction, NewCorrection, Reading } from '@/lib/schema/reading';
import { applyCorrection } from './apply-correction';
import type { Standing } from './standing';

export type AnyReading = Omit<Reading, 'jobId' | 'receivedAt' | 'deviceId'>;
export type AnyCorrection = NewCorrection & Pick<Correction, 'seq'>;

/** What one reading stands for once the corrections that name it are heard, in the order of the book. */
export function standingOf(reading: AnyReading, corrections: readonly AnyCorrection[]): Standing {
  const first = firstStanding(reading);
  if (corrections.length === 0) return first;
  return [...corrections]
    .sort((a, b) => a.seq - b.seq)
    .reduce((target, correction) => applyCorrection(correction, target), first);
}

function firstStanding(reading: AnyReading): Standing {
  return {
    id: reading.id,
    seq: reading.seq,
    pieceId: reading.pieceId,
    featureId: reading.featureId,
    station: reading.station,
    direction: reading.direction,
    gaugeId: reading.gaugeId,
    personId: reading.personId,
    valuePm: reading.valuePm,
    resolutionPm: reading.resolutionPm,
    unit: reading.unit,
    text: reading.text,
    firstText: null,
    deviceTime: reading.deviceTime,
    state: reading.heldAs === null ? 'counted' : 'held',
    heldAs: reading.heldAs,
    reason: '',
    saidRight: false,
    wasHeld: false,
  };
}
