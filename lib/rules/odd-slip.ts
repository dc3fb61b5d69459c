import type { SlipKind } from '@/lib/schema/reading';
import type { DecimalMark } from '@/lib/units/picometres';
import { counted } from './cells';
import { entrySlipFacts } from './entry-slip-facts';
import type { JobView } from './job-view';
import type { OddPiece } from './odd-pieces';
import { slipOf } from './slip';
import type { Standing } from './standing';

/** The reading of an odd piece that is most likely wrong, and how; `kind` null where no slip explains it. */
export type OddSlip = { reading: Standing; kind: SlipKind | null; insteadPm: number | null };

/**
 * What an odd piece's readings look like against where the line puts it: each is held against that size,
 * by the fingerprints of `slipOf`. The first that one explains is named;
 * else the one farthest off. Null where the piece has no counted reading with a known gauge.
 */
export function oddSlip(view: JobView, odd: OddPiece, decimal: DecimalMark): OddSlip | null {
  const { cell, feature, valuePm, size } = odd.point;
  const expectedPm = size.valuePm - (valuePm - odd.expectedPm);
  const readings = counted(cell.readings);
  for (const reading of readings) {
    const gauge = view.sheet.gauges.find(({ id }) => id === reading.gaugeId);
    if (gauge === undefined) continue;
    const facts = entrySlipFacts({
      view,
      cell,
      feature,
      gauge,
      partner: null,
      unit: reading.unit,
      decimal,
      exceptId: reading.id,
    });
    // The gauge's history has the doubted reading in it and would excuse it.
    const slip = slipOf(reading, { ...facts, othersPm: [expectedPm], repeatPm: null });
    if (slip !== null && slip.kind !== 'far off') {
      return { reading, kind: slip.kind, insteadPm: slip.insteadPm };
    }
  }
  const farthest = readings.toSorted(
    (a, b) => Math.abs(b.valuePm - expectedPm) - Math.abs(a.valuePm - expectedPm),
  )[0];
  return farthest === undefined ? null : { reading: farthest, kind: null, insteadPm: null };
}
