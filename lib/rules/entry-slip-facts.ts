import type { Feature } from '@/lib/schema/feature';
import type { Gauge } from '@/lib/schema/gauge';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { counted, type Cell } from './cells';
import type { EntryPartner } from './entry-partner';
import type { JobView } from './job-view';
import type { Elsewhere, SlipFacts } from './slips/slip-facts';

/** What a reading of one feature on one piece is held against, from all that the job knows. */
export function entrySlipFacts(given: {
  view: Pick<JobView, 'parts' | 'cells'>;
  cell: Cell;
  feature: Feature;
  gauge: Gauge;
  partner: EntryPartner | null;
  unit: LengthUnit;
  decimal: DecimalMark;
  /** The reading in question, where it is in the cell already: it is not held against itself. */
  exceptId?: string;
}): SlipFacts {
  const { view, cell, feature, gauge, partner, unit, decimal, exceptId } = given;
  const others = counted(cell.readings).filter((reading) => reading.id !== exceptId);
  const history = view.cells.history.get(gauge.id);
  return {
    kind: feature.kind,
    nominalPm: feature.nominalPm,
    limits: cell.limits,
    othersPm: others.map((reading) => reading.valuePm),
    beforeCutPm: counted(cell.earlier).at(-1)?.valuePm ?? null,
    gauge,
    repeatPm: history?.sdPm ?? null,
    repeatDegrees: history?.degrees ?? 0,
    setting: { decimal, unit, nominalPm: feature.nominalPm },
    elsewhere: elsewhere(view, cell, feature, partner),
  };
}

/** The measured sizes a reading could be taken from by mistake: of the same piece, and of its partner. */
function elsewhere(
  view: Pick<JobView, 'parts' | 'cells'>,
  cell: Cell,
  feature: Feature,
  partner: EntryPartner | null,
): Elsewhere[] {
  const part = view.parts.find(({ features }) => features.some(({ id }) => id === feature.id));
  const places = [
    ...(part?.features ?? [])
      .filter(({ id }) => id !== feature.id)
      .map(({ id }) => ({ pieceId: cell.pieceId, featureId: id })),
    ...(partner === null ? [] : [{ pieceId: partner.piece.id, featureId: partner.feature.id }]),
  ];
  return places.flatMap((place) => {
    const values = counted(
      view.cells.byKey.get(`${place.pieceId} ${place.featureId}`)?.readings ?? [],
    ).map((reading) => reading.valuePm);
    if (values.length === 0) return [];
    return [{ ...place, lowPm: Math.min(...values), highPm: Math.max(...values) }];
  });
}
