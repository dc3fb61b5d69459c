import { runCapability, type CapabilityDoubt } from '@/lib/maths/control/run-capability';
import { andersonDarlingTest } from '@/lib/maths/statistics/anderson-darling-test';
import { spreadWithinStep } from '@/lib/maths/statistics/spread-within-step';
import { freshTurns } from './run-stretches';
import type { RunPoint, RunView } from './run-view';
import { toleranceInterval } from './tolerance-interval';

/** Why no capability is given. */
export type NoCapability =
  /** The drawing gives no limit. */
  | 'no limits'
  /** Features alike whose limits are not. */
  | 'limits differ'
  /** Every piece reads the same. */
  | 'no spread'
  | CapabilityDoubt
  /** Sizes that are not normal: the indices and their limits suppose that they are. */
  | 'not normal';

export type CapabilityView =
  | { kind: 'none'; reasons: NoCapability[]; pieces: number; resolutionPm: number | null }
  | {
      kind: 'figures';
      pieces: number;
      /** With both limits only. */
      cp: { value: number; low: number; high: number } | null;
      cpk: { value: number; low: number; high: number };
      /** Share of pieces beyond the limits if sizes are normal. */
      outside: number;
      meanPm: number;
      sigmaPm: number;
      /** Between these sizes lie at least 99 % of pieces made like these, with 95 % confidence, pm. */
      between: { lowPm: number; highPm: number };
      /** The coarsest gauge that told a size, pm. */
      resolutionPm: number | null;
      /** Charted as departures from their own nominals: so are the sizes here. */
      fromNominal: boolean;
    };

const needsPieces: ReadonlySet<CapabilityDoubt> = new Set(['drifting', 'not steady']);
const confidence = 0.95;
const significance = 0.05;
const picoPerMilli = 1e9;

/**
 * Capability of a run in the words of ISO 22514, or every reason why it would mean nothing.
 *
 * Given only of thirty pieces or more that are steady and do not drift, read with a gauge whose division is
 * a tenth of the tolerance or less, and normal by the test of Anderson and Darling at 5 %, each size spread
 * over the division it was read to (D27); always with its limits at 95 %. The spread is that of all pieces: in a steady run Cp and Cpk ([iso-22514-2]).
 * Rules and figures by `runCapability`; the form of the spread by `andersonDarlingTest`.
 */
export function capabilityView(view: RunView): CapabilityView {
  const { points, limits, nominalPm, resolutionPm } = view;
  const pieces = points.length;
  const none = (reasons: NoCapability[]): CapabilityView => ({
    kind: 'none',
    reasons,
    pieces,
    resolutionPm,
  });
  if (view.limitsDiffer) return none(['limits differ']);
  if (limits.lowerPm === null && limits.upperPm === null) return none(['no limits']);
  const offMm = (pm: number) => (pm - nominalPm) / picoPerMilli;
  const sizesMm = points.map(({ valuePm }) => offMm(valuePm));
  const eventsBefore = eventsAt(view);
  if (pieces < 5 || eventsBefore.length >= pieces - 1) return none(['too few']);
  const found = runCapability({
    sizesMm,
    ...(limits.lowerPm === null ? {} : { lowerMm: offMm(limits.lowerPm) }),
    ...(limits.upperPm === null ? {} : { upperMm: offMm(limits.upperPm) }),
    ...(resolutionPm === null ? {} : { resolutionMm: resolutionPm / picoPerMilli }),
    confidence,
    eventsBefore,
  });
  const { overall } = found;
  // Of too few pieces nothing else can be said, but a gauge that will not do is better known now.
  const isShort = found.doubts.includes('too few');
  const doubts = found.doubts.filter((doubt) => !isShort || !needsPieces.has(doubt));
  if (overall === undefined) {
    return none(doubts.map((doubt) => (doubt === 'gauge too coarse' ? 'no spread' : doubt)));
  }
  if (doubts.length > 0) return none(doubts);
  const within = spreadWithinStep(sizesMm, stepOf(points, resolutionPm) / picoPerMilli);
  if (andersonDarlingTest(within).p < significance) return none(['not normal']);
  const { indices, cpInterval, cpkInterval } = overall;
  const meanPm = nominalPm + overall.meanMm * picoPerMilli;
  const sigmaPm = overall.sigmaMm * picoPerMilli;
  return {
    kind: 'figures',
    pieces,
    cp:
      indices.cp === undefined || cpInterval === undefined
        ? null
        : { value: indices.cp, low: cpInterval.low, high: cpInterval.high },
    cpk: { value: indices.cpk, low: cpkInterval.low, high: cpkInterval.high },
    outside: indices.fractionAbove + indices.fractionBelow,
    meanPm,
    sigmaPm,
    between: toleranceInterval({ pieces, meanPm, sigmaPm }),
    resolutionPm,
    fromNominal: view.features.length > 1,
  };
}

/** The step the sizes go by, pm: the gauge's, or finer where several readings of a piece were averaged. */
function stepOf(points: readonly RunPoint[], resolutionPm: number | null): number {
  const sorted = points.map(({ valuePm }) => valuePm).sort((a, b) => a - b);
  const mostPm = resolutionPm ?? 1;
  const gaps = sorted.slice(1).map((valuePm, i) => valuePm - sorted[i]!);
  // Means are rounded to whole picometres: less than a twentieth of a division is the same size.
  return Math.min(mostPm, ...gaps.filter((gapPm) => gapPm > mostPm / 20));
}

/** Index of each measured piece made just after an event that starts the drift afresh. */
function eventsAt({ points, events }: RunView): number[] {
  const at = freshTurns(events).map((turn) => points.findIndex(({ ordinal }) => ordinal > turn));
  return [...new Set(at)].filter((index) => index > 0);
}
