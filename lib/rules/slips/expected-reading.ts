import { metalLeftSide } from '../verdict';
import type { DoubtedReading, SlipFacts } from './slip-facts';

/** What a reading was expected to be. Lengths in pm. */
export type ExpectedReading = {
  /** The other readings say it, or the limits, or nothing better than the nominal. */
  from: 'readings' | 'limits' | 'nominal';
  /** The stretch it should have fallen in. */
  lowPm: number;
  highPm: number;
  /** The stretch in which it is not doubted: that one and its tolerance, and metal still to come off. */
  calmLowPm: number;
  calmHighPm: number;
  /** How near a mended reading must come to the stretch: max(3 s, 2 resolutions). */
  tolerancePm: number;
};

/** Where only the nominal is known: this share of it, and at least this much, either way. */
const nominalShare = 0.02;
const nominalLeastPm = 200_000_000;
/** Stock a piece may still carry: a shaft up to this many times its nominal, a bore down to 1 less this. */
const stockShare = 0.6;

/**
 * What the other readings of a feature predict of the next one, or the limits where it is the first.
 *
 * From other readings: the stretch from their smallest to their largest, so that form is no slip. From
 * limits: between them, and beyond on the side where metal can still come off (as far as the size
 * before the cut). Doubted from max(5 s, 4 resolutions, the last place typed) outside it, s being the gauge's history, else
 * half its stated uncertainty, else nothing. Common practice, no source.
 *
 * Null for roundness, run-out and straightness without other readings: nothing predicts those.
 */
export function expectedReading(
  { resolutionPm }: Pick<DoubtedReading, 'resolutionPm'>,
  facts: SlipFacts,
): ExpectedReading | null {
  const stepPm = Math.max(facts.gauge.resolutionPm, resolutionPm);
  const sdPm = facts.repeatPm ?? (facts.gauge.uncertaintyPm ?? 0) / 2;
  const tolerancePm = Math.max(3 * sdPm, 2 * stepPm);
  // A coarse text is doubted for no more than its own rounding.
  const doubtPm = Math.max(5 * sdPm, 4 * facts.gauge.resolutionPm, resolutionPm);

  if (facts.othersPm.length > 0) {
    const lowPm = Math.min(...facts.othersPm);
    const highPm = Math.max(...facts.othersPm);
    const calm = { calmLowPm: lowPm - doubtPm, calmHighPm: highPm + doubtPm };
    return { from: 'readings', lowPm, highPm, ...calm, tolerancePm };
  }
  if (isForm(facts)) return null;

  const sparePm = Math.max(nominalShare * facts.nominalPm, nominalLeastPm);
  const { lowerPm, upperPm } = facts.limits;
  const lowPm = lowerPm ?? Math.min(facts.nominalPm, upperPm ?? Infinity) - sparePm;
  const highPm = upperPm ?? Math.max(facts.nominalPm, lowerPm ?? -Infinity) + sparePm;
  const from = lowerPm === null || upperPm === null ? 'nominal' : 'limits';
  const side = metalLeftSide(facts.kind);
  const stockTopPm = facts.beforeCutPm ?? facts.nominalPm * (1 + stockShare);
  const stockBottomPm = facts.beforeCutPm ?? facts.nominalPm * (1 - stockShare);
  return {
    from,
    lowPm,
    highPm,
    calmLowPm: (side === 'bottom' ? Math.min(lowPm, stockBottomPm) : lowPm) - doubtPm,
    calmHighPm: (side === 'top' ? Math.max(highPm, stockTopPm) : highPm) + doubtPm,
    tolerancePm,
  };
}

function isForm({ kind }: SlipFacts): boolean {
  return kind === 'roundness' || kind === 'run-out' || kind === 'straightness';
}
