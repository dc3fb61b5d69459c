import type { Cut } from '@/lib/schema/fit';
import { counted, type Cell } from '../cells';
import type { Standing } from '../standing';
import { cutPlaces } from './cut-places';
import { saysOn } from './slide';

/** One line of the cut log. Lengths on diameter, pm; null is "not known". */
export type CutStep = {
  cut: Cut;
  /** Its place among the cuts that stand, from 1. */
  number: number;
  /** `unsaid`: metal came off and nobody said what was asked; `sleeve`: metal was put on again. */
  kind: 'cut' | 'spring' | 'unsaid' | 'sleeve';
  askedPm: number | null;
  beforePm: number | null;
  afterPm: number | null;
  gotPm: number | null;
  /** Got over asked, of a cut of which both are known. */
  ratio: number | null;
  /** Something was changed before it: a new stretch begins. */
  afresh: boolean;
};

type Facts = {
  cell: Pick<Cell, 'readings' | 'earlier'>;
  /** All cuts of the job. */
  cuts: readonly Cut[];
  pieceId: string;
  featureId: string;
  side: 'external' | 'internal';
  /** The number in the book of a reading of the job. */
  seqOf: (readingId: string) => number | undefined;
  /** The size that governs, from the counted readings of one stretch between cuts, pm. */
  sizeOf: (readings: readonly Standing[]) => number | null;
};

/**
 * The cut log of a feature on a piece, in the order of the cuts: what was asked, what came off, what is left.
 *
 * What a piece measured before and after a cut is told by the readings between the cuts, so that a reading
 * struck out or put right changes the log with it. Where there are none, what the cut itself says counts.
 */
export function cutSteps({
  cell,
  cuts,
  pieceId,
  featureId,
  side,
  seqOf,
  sizeOf,
}: Facts): CutStep[] {
  const ours = cuts
    .filter(
      (cut) =>
        cut.pieceId === pieceId && cut.featureId === featureId && (cut.struckAt ?? null) === null,
    )
    .sort((a, b) => a.ordinal - b.ordinal);
  const readings = [...cell.earlier, ...cell.readings];
  const ends = cutPlaces(ours, seqOf);
  const between = (index: number): number | null => {
    const from = index === 0 ? -Infinity : ends[index - 1]!;
    const to = index === ours.length ? Infinity : ends[index]!;
    return sizeOf(counted(readings.filter(({ seq }) => seq > from && seq <= to)));
  };
  const sizes = [...ours, null].map((_, index) => between(index));
  return ours.map((cut, index): CutStep => {
    const beforePm = sizes[index] ?? (index === 0 ? cut.beforePm : null);
    const afterPm = sizes[index + 1] ?? cut.afterPm;
    const kind = kindOf(cut);
    const askedPm = kind === 'cut' ? cut.askedPm : null;
    const change = beforePm === null || afterPm === null ? null : beforePm - afterPm;
    const gotPm =
      change === null || kind === 'sleeve' ? null : side === 'external' ? change : 0 - change;
    return {
      cut,
      number: index + 1,
      kind,
      askedPm,
      beforePm,
      afterPm,
      gotPm,
      ratio: askedPm === null || gotPm === null ? null : gotPm / askedPm,
      afresh: isAfresh(cut, ours.slice(0, index)),
    };
  });
}

function kindOf({ changed, spring, askedPm }: Cut): CutStep['kind'] {
  if (changed === 'sleeve') return 'sleeve';
  if (spring) return 'spring';
  return askedPm === 0 ? 'unsaid' : 'cut';
}

/** A person said so, or it was put on with another slide, machine or tool than the last cut that says its own. */
function isAfresh(cut: Cut, earlier: readonly Cut[]): boolean {
  if ((cut.changed ?? null) !== null) return true;
  const before = earlier.findLast((one) => kindOf(one) === 'cut' && saysOn(one));
  if (before === undefined || kindOf(cut) !== 'cut') return false;
  const differs = (field: 'dial' | 'divisionPm' | 'fineFeed') =>
    (before[field] ?? null) !== null && (cut[field] ?? null) !== (before[field] ?? null);
  return (
    differs('dial') || differs('divisionPm') || differs('fineFeed') || cut.tool !== before.tool
  );
}
