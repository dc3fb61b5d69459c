import type { Fit, Pair, PairLook, PairSide, PieceFate } from '@/lib/schema/fit';
import type { Standing } from './standing';

/** One thing that is no longer as it was when a person last looked at a pair. Lengths in pm. */
export type PairChange =
  | { kind: 'piece struck' | 'piece scrapped' | 'to be sleeved' | 'piece back'; side: Side }
  | { kind: 'no size' | 'sized again'; side: Side }
  | ({ kind: 'taken back' | 'counts too' | 'cut since'; valuesPm: number[] } & Read)
  | ({ kind: 'mistyped'; fromPm: number; toPm: number } & Read)
  | ({ kind: 'moved'; valuePm: number; toPieceId: string; toFeatureId: string } & Read)
  | ({ kind: 'moved place'; valuePm: number; from: string; to: string } & Read)
  | { kind: 'other gauge'; side: Side; fromGaugeId: string; toGaugeId: string }
  | { kind: 'gauge known to'; gaugeId: string; fromPm: number | null; toPm: number | null }
  | { kind: 'gauge reads to'; gaugeId: string; fromPm: number; toPm: number }
  | { kind: 'gauge struck' | 'gauge put back'; gaugeId: string }
  | { kind: 'wanted'; from: Limits; to: Limits }
  | { kind: 'governs'; from: Fit['governs']; to: Fit['governs'] }
  | { kind: 'not known' };

type Side = 'internal' | 'external';
/** Readings of one side, in the step of the gauge they were taken with. */
type Read = { side: Side; stepPm: number };
type Limits = { minPm: number; maxPm: number };

/** The clearance of a pair, pm, and its expanded uncertainty. */
export type PairFigure = { clearancePm: number; expandedPm: number };

/** A final pair that is no longer what a person last looked at. */
export type PairFlag = {
  /** What was recorded, or let stand last; null where nothing was recorded. */
  was: PairFigure | null;
  /** What the readings say now; null where a piece has no size any more. */
  now: PairFigure | null;
  /** Why, in the order of the sides; never empty. */
  changes: PairChange[];
};

/** What a pair stands on at the moment. */
export type PairNow = {
  figure: PairFigure | null;
  internal: PairSide | null;
  external: PairSide | null;
  /** Why a piece takes no part any more; null while it does. */
  fate: Record<Side, PieceFate | null>;
  /** What has become of a reading, by its id. */
  reading: (id: string) => (Standing & { isBeforeCut: boolean }) | undefined;
};

/**
 * What has changed under a final pair since a person last looked at it, or null while nothing has.
 *
 * Compares what was kept with what is: whether both pieces still take part (struck out, scrapped, waiting for
 * a sleeve), each reading that told a size (taken back, corrected, moved, cut since, another one that counts), the gauge as it was stated (its uncertainty, its resolution, struck out),
 * what is wanted, what governs. The repeatability a gauge shows elsewhere on the job moves the uncertainty of
 * every pair a little with every reading and raises no flag by itself. A pair from before these were kept is
 * compared by its clearance alone. Pure: the same sheet raises the same flags on every device.
 */
export function pairFlag(pair: Pair, fit: Fit, now: PairNow): PairFlag | null {
  const look = pair.looks?.at(-1);
  const was = recorded(look ?? pair);
  const changes = look === undefined ? [] : changesOf(look, pair, fit, now);
  for (const side of sides) {
    const fate = now.fate[side];
    if (fate !== (look?.[`${side}Fate`] ?? null)) {
      changes.push({ kind: fate === null ? 'piece back' : fateChanges[fate], side });
    } else if (look === undefined && now[side] === null) changes.push({ kind: 'no size', side });
  }
  if (changes.length > 0) return { was, now: now.figure, changes: grouped(changes) };
  // Let stand without a size, it stands until there is one again.
  if (look !== undefined && was === null && now.figure === null) return null;
  return was !== null && was.clearancePm === now.figure?.clearancePm
    ? null
    : { was, now: now.figure, changes: [{ kind: 'not known' }] };
}

const sides = ['internal', 'external'] as const;

const fateChanges = {
  struck: 'piece struck',
  scrapped: 'piece scrapped',
  sleeve: 'to be sleeved',
} as const;

function recorded(kept: { clearancePm: number | null; uncertaintyPm: number | null }) {
  if (kept.clearancePm === null) return null;
  return { clearancePm: kept.clearancePm, expandedPm: kept.uncertaintyPm ?? 0 };
}

function changesOf(look: PairLook, pair: Pair, fit: Fit, now: PairNow): PairChange[] {
  const homes = {
    internal: { pieceId: pair.internalPieceId, featureId: fit.internalFeatureId },
    external: { pieceId: pair.externalPieceId, featureId: fit.externalFeatureId },
  };
  const ofSides = sides.flatMap((side) =>
    sideChanges({ side, ...homes[side] }, look[side], now[side], now.reading),
  );
  const ofGauges = sides.flatMap((side) => gaugeChanges(look[side], now[side]));
  const known = new Set<string>();
  const once = ofGauges.filter((change) => {
    const key = JSON.stringify(change);
    return !known.has(key) && known.add(key);
  });
  const { minPm, maxPm, governs } = fit;
  const ofFit: PairChange[] = [];
  if (look.minPm !== minPm || look.maxPm !== maxPm) {
    const from = { minPm: look.minPm, maxPm: look.maxPm };
    ofFit.push({ kind: 'wanted', from, to: { minPm, maxPm } });
  }
  if (look.governs !== governs) ofFit.push({ kind: 'governs', from: look.governs, to: governs });
  return [...ofSides, ...once, ...ofFit];
}

type Home = { side: Side; pieceId: string; featureId: string };

function sideChanges(
  home: Home,
  kept: PairSide | null,
  is: PairSide | null,
  reading: PairNow['reading'],
): PairChange[] {
  if (kept === null) return is === null ? [] : [{ kind: 'sized again', side: home.side }];
  const { side } = home;
  const stepPm = kept.resolutionPm;
  const here = new Map(is?.readings.map((one) => [one.id, one]));
  const changes = kept.readings.flatMap((old): PairChange[] => {
    const same = here.get(old.id);
    if (same === undefined) return lost({ ...home, stepPm }, old, reading(old.id));
    if (same.valuePm !== old.valuePm) {
      return [{ kind: 'mistyped', side, stepPm, fromPm: old.valuePm, toPm: same.valuePm }];
    }
    if (same.at === old.at) return [];
    return [{ kind: 'moved place', side, stepPm, valuePm: old.valuePm, from: old.at, to: same.at }];
  });
  if (is === null) return changes.length > 0 ? changes : [{ kind: 'no size', side }];
  if (is.gaugeId !== kept.gaugeId) {
    return [
      ...changes,
      { kind: 'other gauge', side, fromGaugeId: kept.gaugeId, toGaugeId: is.gaugeId },
    ];
  }
  const before = new Set(kept.readings.map(({ id }) => id));
  const further = is.readings.filter(({ id }) => !before.has(id));
  if (further.length === 0) return changes;
  const valuesPm = further.map(({ valuePm }) => valuePm);
  return [...changes, { kind: 'counts too', side, stepPm: is.resolutionPm, valuesPm }];
}

/** What became of a reading that told the size and does no longer; nothing where only another gauge does. */
function lost(
  { side, pieceId, featureId, stepPm }: Home & { stepPm: number },
  old: PairSide['readings'][number],
  is: ReturnType<PairNow['reading']>,
): PairChange[] {
  const valuesPm = [old.valuePm];
  if (is === undefined || is.state !== 'counted')
    return [{ kind: 'taken back', side, stepPm, valuesPm }];
  if (is.pieceId !== pieceId || is.featureId !== featureId) {
    const { pieceId: toPieceId, featureId: toFeatureId } = is;
    return [{ kind: 'moved', side, stepPm, valuePm: old.valuePm, toPieceId, toFeatureId }];
  }
  if (is.isBeforeCut) return [{ kind: 'cut since', side, stepPm, valuesPm }];
  return [];
}

function gaugeChanges(kept: PairSide | null, is: PairSide | null): PairChange[] {
  if (kept === null || is === null || kept.gaugeId !== is.gaugeId) return [];
  const { gaugeId } = kept;
  const changes: PairChange[] = [];
  if (kept.gaugeUncertaintyPm !== is.gaugeUncertaintyPm) {
    const [fromPm, toPm] = [kept.gaugeUncertaintyPm, is.gaugeUncertaintyPm];
    changes.push({ kind: 'gauge known to', gaugeId, fromPm, toPm });
  }
  if (kept.resolutionPm !== is.resolutionPm) {
    const [fromPm, toPm] = [kept.resolutionPm, is.resolutionPm];
    changes.push({ kind: 'gauge reads to', gaugeId, fromPm, toPm });
  }
  if (kept.gaugeStruck !== is.gaugeStruck) {
    changes.push({ kind: is.gaugeStruck ? 'gauge struck' : 'gauge put back', gaugeId });
  }
  return changes;
}

/** Readings of one side that went the same way are said together. */
function grouped(changes: readonly PairChange[]): PairChange[] {
  const all: PairChange[] = [];
  for (const change of changes) {
    const alike = all.find(
      (other) => 'valuesPm' in other && 'valuesPm' in change && isAlike(other, change),
    );
    if (alike !== undefined && 'valuesPm' in alike && 'valuesPm' in change) {
      alike.valuesPm.push(...change.valuesPm);
    } else {
      all.push('valuesPm' in change ? { ...change, valuesPm: [...change.valuesPm] } : change);
    }
  }
  return all;
}

function isAlike(a: { kind: string; side: Side }, b: { kind: string; side: Side }): boolean {
  return a.kind === b.kind && a.side === b.side;
}
