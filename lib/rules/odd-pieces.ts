import { driftSinceEvent, type Drift } from '@/lib/maths/control/drift-since-event';
import { leastSquaresLine } from '@/lib/maths/control/least-squares-line';
import { lineAt } from '@/lib/maths/control/line-at';
import { lineOutlierTest } from '@/lib/maths/control/line-outlier-test';
import { counted } from './cells';
import { stretchesOf } from './run-stretches';
import type { RunPoint, RunView, SetAside } from './run-view';

/** A piece that stands off the line of its stretch. */
export type OddPiece = {
  point: RunPoint;
  /** How far it is off the line through the others of its stretch, pm; above is positive. */
  offPm: number;
  /** Where that line says it should be, pm, charted as the points are. */
  expectedPm: number;
  /** Somebody has said that it is right: it is named, and not asked about again. */
  saidRight: boolean;
};

export type OddPieces = {
  odd: OddPiece[];
  /** Pieces of the stretch since the last event that were set aside. */
  aside: SetAside[];
  /** The drift since the last event with everything that was read, and with nothing that is odd or set
   * aside; null where neither is in that stretch. */
  drift: { withAll: Drift; without: Drift } | null;
};

/** The chance that a clean stretch has a piece called odd. */
const significance = 0.05;
/** A stretch needs this many pieces: five for the line, and the one that is asked about. */
const leastPieces = 6;
/** No more than this share of a stretch is called odd; beyond it, it is the line that does not fit. */
const mostShare = 0.2;
const picoPerMilli = 1e9;

/**
 * Pieces that stand off the line, in every stretch between events that start the drift afresh.
 *
 * The mean-shift outlier test of `lineOutlierTest` at 5 %, once more without the one just found, up to a
 * fifth of the stretch. A piece within two divisions of the gauge of the line is not odd: roundings do
 * that. Its stated uncertainty is not asked: what all readings of a gauge share moves no single piece, and
 * one slip among a piece's readings would hide itself by it. Nothing is taken out of any figure by this:
 * it is a question to a person.
 * Cost: O(pieces) for each that is found.
 */
export function oddPieces(view: RunView): OddPieces {
  const leastPm = 2 * (view.resolutionPm ?? 0);
  const odd = stretchesOf(view).flatMap((stretch) => oddOf(stretch, leastPm));
  const aside = view.aside.filter(({ earlier }) => !earlier);
  return { odd, aside, drift: driftsOf(view, odd, aside) };
}

function oddOf(stretch: readonly RunPoint[], leastPm: number): OddPiece[] {
  let rest = [...stretch];
  const found: RunPoint[] = [];
  const most = Math.floor(stretch.length * mostShare);
  while (rest.length >= leastPieces && found.length < most) {
    const [x, y] = numbers(rest);
    if (new Set(y).size < 3 || !(leastSquaresLine(x, y).residualSd > 0)) break;
    const { index, isOutlier } = lineOutlierTest(x, y, significance);
    if (!isOutlier) break;
    const point = rest[index]!;
    rest = rest.filter((_, i) => i !== index);
    const offPm = offLine(point, rest);
    if (Math.abs(offPm) <= leastPm) break;
    found.push(point);
  }
  return found
    .sort((a, b) => a.ordinal - b.ordinal)
    .map((point) => {
      const offPm = offLine(point, rest);
      const saidRight = counted(point.cell.readings).every((reading) => reading.saidRight);
      return { point, offPm, expectedPm: point.valuePm - offPm, saidRight };
    });
}

/** Taken off the first value, so that a size of metres costs no picometre. */
function numbers(points: readonly RunPoint[]): [x: number[], y: number[]] {
  const fromPm = points[0]!.valuePm;
  return [
    points.map(({ ordinal }) => ordinal),
    points.map(({ valuePm }) => (valuePm - fromPm) / picoPerMilli),
  ];
}

function offLine(point: RunPoint, others: readonly RunPoint[]): number {
  const line = leastSquaresLine(...numbers(others));
  const atPm = others[0]!.valuePm + lineAt(line, point.ordinal) * picoPerMilli;
  return Math.round(point.valuePm - atPm);
}

function driftsOf(
  view: RunView,
  odd: readonly OddPiece[],
  aside: readonly SetAside[],
): OddPieces['drift'] {
  const since = view.points.filter(({ earlier }) => !earlier);
  const left = new Set(odd.filter(({ point }) => !point.earlier).map(({ point }) => point.ordinal));
  if (left.size === 0 && aside.length === 0) return null;
  const all = [...since, ...aside].sort((a, b) => a.ordinal - b.ordinal);
  const clean = since.filter(({ ordinal }) => !left.has(ordinal));
  return { withAll: driftOf(view, all), without: driftOf(view, clean) };
}

function driftOf(
  { nominalPm, limits }: RunView,
  points: readonly { ordinal: number; valuePm: number }[],
): Drift {
  const offMm = (pm: number) => (pm - nominalPm) / picoPerMilli;
  return driftSinceEvent({
    ordinals: points.map(({ ordinal }) => ordinal),
    sizesMm: points.map(({ valuePm }) => offMm(valuePm)),
    ...(limits.lowerPm === null ? {} : { lowerMm: offMm(limits.lowerPm) }),
    ...(limits.upperPm === null ? {} : { upperMm: offMm(limits.upperPm) }),
    confidence: 0.95,
  });
}
