import { formFindings, type FormFinding } from '@/lib/maths/form/form-findings';
import { twoPointForm } from '@/lib/maths/form/two-point-form';
import type { Feature } from '@/lib/schema/feature';
import { mmFromPm, pmFromMm } from '@/lib/units/picometres';
import { counted, type Cell } from './cells';

/** What the stations and directions of a round feature say of its shape. Lengths in pm. */
export type EntryForm = {
  /** The largest difference across a station; null where no station was read twice across. */
  roundWithinPm: number | null;
  /** What is larger than the doubt of a reading, the largest first. */
  findings: (FormFinding & { amountPm: number })[];
};

/** Three standard uncertainties of a reading: less is not told. Common practice, no source. */
const toldFrom = 3;

/**
 * Round within what, and tapered, oval, barrel or waist, from the latest reading of every place.
 *
 * Null for what is not round, and while fewer than two places were read or nothing says how well a
 * reading repeats.
 */
export function entryForm(
  { readings, size }: Pick<Cell, 'readings' | 'size'>,
  feature: Pick<Feature, 'kind' | 'stations' | 'directions'>,
): EntryForm | null {
  if ((feature.kind !== 'bore' && feature.kind !== 'outside') || size === null) return null;
  const finest = counted(readings).filter((reading) => reading.gaugeId === size.gaugeId);
  const diametersMm = feature.stations.map((station) =>
    feature.directions.map((direction) => {
      const at = finest.findLast((r) => r.station === station && r.direction === direction);
      return at === undefined ? null : mmFromPm(at.valuePm);
    }),
  );
  const read = diametersMm.flat().filter((diameter) => diameter !== null);
  if (read.length < 2) return null;
  const side = feature.kind === 'bore' ? 'internal' : 'external';
  const form = twoPointForm({ side, diametersMm });
  const leastToldMm = toldFrom * mmFromPm(size.standardPm);
  const across = form.ovality.map(({ amountMm }) => pmFromMm(amountMm));
  return {
    roundWithinPm: across.length === 0 ? null : Math.max(...across),
    findings: formFindings(form, leastToldMm).map((finding) => ({
      ...finding,
      amountPm: pmFromMm(finding.amountMm),
    })),
  };
}
