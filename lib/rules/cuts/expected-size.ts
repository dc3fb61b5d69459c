import { combinedUncertainty } from '@/lib/maths/metrology/combined-uncertainty';
import { effectiveDegrees } from '@/lib/maths/metrology/effective-degrees';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import type { CutRatio } from '@/lib/maths/fit/cut-ratio';
import type { Size } from '../size';

/** What 2 standard deviations of a normal distribution cover (JCGM 100, table G.2). */
const coverage = 0.9545;

/** The size a cut is expected to leave, and the doubt of that at 95.45 %, pm. */
export type ExpectedSize = { valuePm: number; expandedPm: number };

/**
 * The size after a cut of so much on diameter: now less (a bore: and) asked x mean ratio.
 *
 * Its doubt combines that of the size now with what one more ratio may differ from the mean,
 * sd sqrt(1 + 1/n). The spread of the ratios is never taken smaller than the doubt of the sizes they come
 * from makes it: two cuts that happen to agree are not certain. Null where fewer than two cuts were learned
 * from: then nothing is said.
 */
export function expectedSize(facts: {
  now: Pick<Size, 'valuePm' | 'standardPm' | 'degrees'>;
  side: 'external' | 'internal';
  askedPm: number;
  learned: CutRatio['learned'];
  /** What the cuts that were learned from were asked for, pm. */
  askedBeforePm: readonly number[];
}): ExpectedSize | null {
  const { now, side, askedPm, learned, askedBeforePm } = facts;
  if (learned.kind !== 'spread') return null;
  const meanAskedPm = askedBeforePm.reduce((sum, pm) => sum + pm, 0) / askedBeforePm.length;
  // A cut's ratio comes from two sizes, each in doubt by as much as this one.
  const ofSizes = (Math.SQRT2 * now.standardPm) / meanAskedPm;
  const cutPm = askedPm * Math.max(learned.sd, ofSizes) * Math.sqrt(1 + 1 / learned.used);
  const parts = [
    { contribution: now.standardPm, degrees: now.degrees },
    { contribution: cutPm, degrees: learned.used - 1 },
  ];
  const standardPm = combinedUncertainty(parts.map(({ contribution }) => contribution));
  const degrees = Math.max(1, effectiveDegrees(parts));
  const takesPm = Math.round(askedPm * learned.mean);
  return {
    valuePm: side === 'external' ? now.valuePm - takesPm : now.valuePm + takesPm,
    expandedPm: expandedUncertainty(standardPm, degrees, coverage).expanded,
  };
}
