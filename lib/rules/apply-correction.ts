import type { NewCorrection } from '@/lib/schema/reading';
import type { Standing } from './standing';

/** What one correction makes of the reading it names. Corrections are to be heard in the order of the book. */
export function applyCorrection(
  correction: Omit<NewCorrection, 'id' | 'readingId' | 'personId' | 'deviceTime' | 'deviceSeq'>,
  target: Standing,
): Standing {
  const reason = correction.reason === '' ? target.reason : correction.reason;
  switch (correction.kind) {
    case 'void':
      return {
        ...target,
        reason,
        state: 'struck',
        saidRight: false,
        wasHeld: target.state === 'struck' ? target.wasHeld : target.state === 'held',
      };
    case 'restore':
      if (target.state !== 'struck') return { ...target, reason };
      // What nobody had settled is asked about again: putting it back does not say that it is right.
      return { ...target, reason, state: target.wasHeld ? 'held' : 'counted' };
    case 'count':
      return { ...target, reason, state: 'counted', saidRight: true };
    case 'mistyped':
      return {
        ...target,
        reason,
        firstText: target.firstText ?? target.text,
        text: correction.text ?? target.text,
        unit: correction.unit ?? target.unit,
        valuePm: correction.valuePm ?? target.valuePm,
        resolutionPm: correction.resolutionPm ?? target.resolutionPm,
        state: 'counted',
        saidRight: false,
      };
    case 'move':
      return {
        ...target,
        reason,
        pieceId: correction.toPieceId ?? target.pieceId,
        featureId: correction.toFeatureId ?? target.featureId,
        station: correction.toStation ?? target.station,
        direction: correction.toDirection ?? target.direction,
      };
  }
}
