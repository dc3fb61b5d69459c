import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { bartlettTest } from '@/lib/maths/statistics/bartlett-test';
import type { RunPoint, RunView } from './run-view';

/** What a chart of this run cannot be trusted for; `lib/text` has the words. */
export type RunDoubt =
  /** Three or fewer different sizes among five pieces or more. */
  | { kind: 'few sizes'; sizes: number; pieces: number }
  /** One division of the gauge is more than a tenth of the tolerance. */
  | { kind: 'coarse gauge'; resolutionPm: number; tolerancePm: number }
  /** The features have not the same limits about their nominals. */
  | { kind: 'limits differ' }
  /** The features do not scatter alike (Bartlett's test): one set of limits does not fit them all. */
  | {
      kind: 'spreads differ';
      p: number;
      /** Scatter of each about its own line, pm, widest first. */
      spreads: { featureId: string; name: string; scatterPm: number }[];
    };

const leastPieces = 5;
const mostSizes = 3;
const significance = 0.05;
const picoPerMilli = 1e9;

/**
 * Everything that makes a chart of this run mean less than it seems.
 *
 * Three or fewer different values, and a division over a tenth of the tolerance: [iso-22514-7] for the
 * tenth, the three common practice, no source. Features alike are compared since the last event, each
 * about a line of its own so that a common drift is not taken for scatter, five pieces or more of each, by
 * Bartlett's test at 5 % ([nist-handbook] 1.3.5.7), which also takes offence at sizes that are not normal.
 */
export function runDoubts(view: RunView): RunDoubt[] {
  return [...ofSizes(view), ...ofGauge(view), ...ofAlike(view)];
}

function ofSizes({ points }: RunView): RunDoubt[] {
  if (points.length < leastPieces) return [];
  const sizes = new Set(points.map(({ valuePm }) => valuePm)).size;
  return sizes > mostSizes ? [] : [{ kind: 'few sizes', sizes, pieces: points.length }];
}

function ofGauge({ resolutionPm, limits: { lowerPm, upperPm } }: RunView): RunDoubt[] {
  if (resolutionPm === null || lowerPm === null || upperPm === null) return [];
  const tolerancePm = upperPm - lowerPm;
  return 10 * resolutionPm > tolerancePm
    ? [{ kind: 'coarse gauge', resolutionPm, tolerancePm }]
    : [];
}

function ofAlike(view: RunView): RunDoubt[] {
  if (view.features.length === 1) return [];
  const doubts: RunDoubt[] = view.limitsDiffer ? [{ kind: 'limits differ' }] : [];
  const since = view.points.filter(({ earlier }) => !earlier);
  const own = view.features.flatMap((feature) => {
    const scatter = scatterOf(since.filter((point) => point.feature.id === feature.id));
    return scatter === null ? [] : [{ feature, ...scatter }];
  });
  if (own.length < 2) return doubts;
  const { p } = bartlettTest(own.map(({ sd, degrees }) => ({ sd, degrees })));
  if (p >= significance) return doubts;
  const spreads = own
    .map(({ feature, sd }) => ({
      featureId: feature.id,
      name: feature.name,
      scatterPm: sd * picoPerMilli,
    }))
    .sort((a, b) => b.scatterPm - a.scatterPm);
  return [...doubts, { kind: 'spreads differ', p, spreads }];
}

/** About a line of its own; null where there are too few, or they do not scatter at all. */
function scatterOf(points: readonly RunPoint[]): { sd: number; degrees: number } | null {
  if (points.length < leastPieces) return null;
  const fromPm = points[0]!.valuePm;
  const { residualSd, degreesOfFreedom } = leastSquaresLine(
    points.map(({ ordinal }) => ordinal),
    points.map(({ valuePm }) => (valuePm - fromPm) / picoPerMilli),
  );
  return residualSd > 0 ? { sd: residualSd, degrees: degreesOfFreedom } : null;
}
