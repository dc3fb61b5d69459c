import type { FormFinding } from '@/lib/maths/form/form-findings';
import { combinedUncertainty } from '@/lib/maths/metrology/combined-uncertainty';
import { fromCertificate, fromResolution } from '@/lib/maths/metrology/type-b';
import { pooledStandardDeviation } from '@/lib/maths/statistics/pooled-standard-deviation';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import type { Feature } from '@/lib/schema/feature';
import { counted, type Cell, type Cells } from './cells';
import { entryForm } from './entry-form';
import type { FitPiece, FitView } from './fit-view';

/** What a round feature's shape is, with the end it is at. Lengths in pm. */
export type Shape =
  (FormFinding & { amountPm: number }) | { kind: 'bell'; amountPm: number; end: 'first' | 'last' };

/** One place of the station plan. */
export type Place = { station: string; direction: string };

/** What the shape of one piece does to the clearance with its partner. Lengths in pm. */
export type ShapeEffect = {
  pieceId: string;
  side: 'internal' | 'external';
  /** The reading that governs; null where the mean does. */
  governs: Place | null;
  shapes: Shape[];
  /** False where it was read at too few places for a shape to show: nothing is then said of it. */
  isReadEnough: boolean;
  /** What the fit is reckoned with: the pair's clearance, or the aim while there is no partner. */
  clearancePm: number;
  reckonedWith: 'partner' | 'aim';
  partnerId: string | null;
  /** The place where the clearance is widest, if it is told apart from the one that governs. */
  widest: (Place & { clearancePm: number }) | null;
  /** Where the mean governs: the place where it is least, if it is told apart from the mean. */
  tightest: (Place & { clearancePm: number }) | null;
};

/** Three standard uncertainties: less is not told. Common practice, no source. */
const toldFrom = 3;

/**
 * The shape of a measured piece of a fit and what it does to the clearance, from the places it was read at.
 *
 * The partner is taken at the size that governs it. A place is told when it differs from the governing size
 * by three standard uncertainties of such a difference or more; the form itself is no doubt of it. Null while the piece has no size.
 */
export function shapeEffect(
  view: FitView,
  side: 'internal' | 'external',
  { piece, size }: FitPiece,
  cell: Cell,
  gauges: Cells['gauges'],
): ShapeEffect | null {
  if (size === null || cell.size === null) return null;
  const feature = side === 'internal' ? view.internalFeature : view.externalFeature;
  const pair = view.pairs.find(
    (one) => (side === 'internal' ? one.internalPieceId : one.externalPieceId) === piece.id,
  );
  const clearancePm = pair?.clearancePm ?? view.fit.aimPm;
  const leastToldPm = toldFrom * Math.SQRT2 * doubtOfPlace(cell, gauges);
  // Metal away from the governing size: a bore grows the clearance, a shaft takes from it.
  const sign = side === 'internal' ? 1 : -1;
  const places = placesOf(cell).map(({ station, direction, valuePm }) => ({
    station,
    direction,
    clearancePm: Math.round(clearancePm + sign * (valuePm - size.valuePm)),
  }));
  const sorted = [...places].sort((a, b) => a.clearancePm - b.clearancePm);
  const least = sorted[0];
  const most = places.find((one) => one.clearancePm === sorted.at(-1)!.clearancePm);
  const told = (place: typeof least) =>
    place !== undefined && Math.abs(place.clearancePm - clearancePm) >= leastToldPm ? place : null;
  return {
    pieceId: piece.id,
    side,
    governs: size.place,
    shapes: shapesOf(cell, feature, leastToldPm),
    isReadEnough: isReadEnough(placesOf(cell), feature),
    clearancePm,
    reckonedWith: pair === undefined ? 'aim' : 'partner',
    partnerId:
      pair === undefined ? null : side === 'internal' ? pair.externalPieceId : pair.internalPieceId,
    widest: told(most),
    tightest: size.place === null ? told(least) : null,
  };
}

/** Two places at the least; along it where it has stations, and across it somewhere where it has directions. */
function isReadEnough(places: readonly Place[], { stations, directions }: Feature): boolean {
  const along = new Set(places.map(({ station }) => station)).size;
  const across = places.some((place) =>
    places.some((other) => other.station === place.station && other.direction !== place.direction),
  );
  return (
    places.length >= 2 && (stations.length < 2 || along >= 2) && (directions.length < 2 || across)
  );
}

/** Findings of the bench, with a bell mouth told from a taper: one end wide, the rest alike. */
function shapesOf(cell: Cell, feature: Feature, leastToldPm: number): Shape[] {
  const findings: Shape[] = entryForm(cell, feature)?.findings ?? [];
  const bell = feature.kind === 'bore' ? bellMouth(cell, feature, leastToldPm) : null;
  if (bell === null) return findings;
  return [bell, ...findings.filter(({ kind }) => kind === 'oval')];
}

function bellMouth(
  cell: Cell,
  { stations, directions }: Feature,
  leastToldPm: number,
): Shape | null {
  const places = placesOf(cell);
  const means = stations.map((station) => {
    const here = places.filter((place) => place.station === station);
    const all = directions.every((d) => here.some(({ direction }) => direction === d));
    return all ? here.reduce((sum, { valuePm }) => sum + valuePm, 0) / here.length : null;
  });
  if (means.length < 3 || means.some((mean) => mean === null)) return null;
  const known = means as number[];
  for (const end of ['first', 'last'] as const) {
    const [mouth, ...rest] = end === 'first' ? known : known.toReversed();
    const amountPm = Math.round(mouth! - rest[0]!);
    const alike = Math.max(...rest) - Math.min(...rest) < leastToldPm;
    if (amountPm >= leastToldPm && alike) return { kind: 'bell', amountPm, end };
  }
  return null;
}

/**
 * Standard uncertainty of what was read at one place, pm: what the gauge is stated to be known to, its step,
 * and how places read more than once repeat. Where neither statement nor repeats are there, that of the size.
 */
function doubtOfPlace(cell: Cell, gauges: Cells['gauges']): number {
  const size = cell.size!;
  const gauge = gauges.get(size.gaugeId);
  const repeats = placesOf(cell).flatMap(({ values }) =>
    values.length < 2
      ? []
      : [{ sd: standardDeviation(values.map((v) => v - values[0]!)), degrees: values.length - 1 }],
  );
  const statedPm = gauge?.uncertaintyPm ?? null;
  if (gauge === undefined || (statedPm === null && repeats.length === 0)) return size.standardPm;
  return combinedUncertainty([
    fromResolution(gauge.resolutionPm),
    fromCertificate(statedPm ?? 0, 2),
    repeats.length === 0 ? 0 : pooledStandardDeviation(repeats).sd,
  ]);
}

/** The mean of what was read at each place with the gauge that told the size. */
function placesOf(cell: Cell): (Place & { valuePm: number; values: number[] })[] {
  const groups = new Map<string, { place: Place; values: number[] }>();
  for (const reading of counted(cell.readings)) {
    if (reading.gaugeId !== cell.size?.gaugeId) continue;
    const { station, direction, valuePm } = reading;
    const key = `${station}\n${direction}`;
    const group = groups.get(key) ?? { place: { station, direction }, values: [] };
    group.values.push(valuePm);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ place, values }) => ({
    ...place,
    values,
    // Off the first one, so that the mean of large numbers costs nothing.
    valuePm: values[0]! + values.reduce((sum, v) => sum + (v - values[0]!), 0) / values.length,
  }));
}
