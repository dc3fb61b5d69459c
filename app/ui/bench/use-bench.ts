'use client';

import { useMemo, useState } from 'react';
import type { Cell } from '@/lib/rules/cells';
import { blindChoice, entryBlind, type Blind } from '@/lib/rules/entry-blind';
import { entryCell } from '@/lib/rules/entry-cell';
import type { LastDigitsFacts } from '@/lib/rules/entry-last-digits';
import { entryNeighbours } from '@/lib/rules/entry-neighbours';
import { entryNext, type PlanStanding } from '@/lib/rules/entry-next';
import type { EntryCell } from '@/lib/rules/entry-order';
import { entryPartner, type EntryPartner } from '@/lib/rules/entry-partner';
import type { Place } from '@/lib/rules/entry-plan';
import { entrySlipFacts } from '@/lib/rules/entry-slip-facts';
import { gaugeMark } from '@/lib/rules/gauge-message';
import type { JobView } from '@/lib/rules/job-view';
import { slipOf, type Slip } from '@/lib/rules/slip';
import type { SlipFacts } from '@/lib/rules/slips/slip-facts';
import type { Standing } from '@/lib/rules/standing';
import type { Feature } from '@/lib/schema/feature';
import type { Gauge } from '@/lib/schema/gauge';
import type { Part, Piece } from '@/lib/schema/part';
import type { LengthUnit } from '@/lib/units/picometres';
import { useJob, type Chosen } from '../job/job-provider';
import { useFresh, type FreshList } from './use-fresh';
import { useMemory } from './use-memory';
import { useWhere, type Asked, type Where } from './use-where';

/** All that the Bench shows of one feature on one piece, and where it goes from there. */
export type Bench = {
  view: JobView;
  chosen: Chosen;
  where: Where;
  fresh: FreshList;
  part: Part;
  piece: Piece;
  feature: Feature;
  /** As it stands with what was just entered. */
  cell: Cell;
  plan: PlanStanding;
  /**
   * Where the next reading goes: the place picked by hand, else the plan's; null when all are taken. A
   * set of a number goes on where it is.
   */
  next: Place | null;
  pick: (place: Place | null) => void;
  /** The reading taken last, whatever became of it. */
  last: Standing | null;
  /** The held reading that is asked about. */
  held: Standing | null;
  gauge: Gauge | null;
  chooseGauge: (id: string) => void;
  /** What a figure without a unit is in. */
  unit: LengthUnit;
  setUnit: (unit: LengthUnit) => void;
  partner: EntryPartner | null;
  /** The doubt that limits taken from a chosen partner carry; 0 for limits of the drawing. */
  partnerStandardPm: number;
  /** The step in which sizes of this cell are shown. */
  resolutionPm: number;
  /** The next piece or feature that still has something to read. */
  nextCell: EntryCell | null;
  /** What is hidden until its set is done; null where everything is to be seen. */
  blind: Blind | null;
  /** Whether these readings of the feature would be hidden. */
  hides: (readings: readonly Standing[]) => boolean;
  /** Shows the set before it is done. */
  showSet: () => void;
  /** Only the last figures are typed. */
  lastDigits: boolean;
  setLastDigits: (on: boolean) => void;
  /** What last figures would be the end of; null while earlier readings are hidden. */
  lastFacts: LastDigitsFacts | null;
  /** What a reading with this gauge is held against. */
  slipFacts: (
    gauge: Gauge,
    read: { text: string; unit: LengthUnit },
    exceptId?: string,
  ) => SlipFacts;
  /** What a held reading is suspected of. */
  slipOfHeld: (held: Standing) => { slip: Slip; gauge: Gauge; othersPm: readonly number[] } | null;
};

/**
 * The Bench of one job, or null where no piece of it has a feature. `blindAtFirst` is what the server
 * knows of the device's choice, so that nothing hidden is seen while the page comes alive.
 */
export function useBench(asked: Asked, blindAtFirst: string | null = null): Bench | null {
  const { view, chosen } = useJob();
  const where = useWhere(view, asked);
  const fresh = useFresh();
  const { cell: at } = where;
  const [picked, setPicked] = useState<{ key: string; place: Place } | null>(null);
  const [gaugeWords, sayGauges] = useMemory(`gauge:${view.sheet.job.id}`);
  const [blindWord] = useMemory('blind', blindAtFirst);
  const [lastWord, sayLast] = useMemory('last-digits');
  const [seenSet, setSeenSet] = useState<string | null>(null);
  const [unitOf, setUnitOf] = useState<{ gaugeId: string; unit: LengthUnit } | null>(null);

  // It goes through all cells of the job, which what was just entered here does not change.
  const nextCell = useMemo(
    () => where.beside(1, (other) => isDone(view, other)) ?? where.beside(1),
    [view, where],
  );

  return useMemo(() => {
    const part = view.parts.find(({ pieces }) => pieces.some(({ id }) => id === at?.pieceId));
    const piece = part?.pieces.find(({ id }) => id === at?.pieceId);
    const feature = part?.features.find(({ id }) => id === at?.featureId);
    if (part === undefined || piece === undefined || feature === undefined) return null;

    const partner = entryPartner(view, piece.id, feature.id);
    const known = view.cell(piece.id, feature.id);
    const partnerStandardPm =
      known.limitsFrom === 'partner' && (partner?.pair ?? null) !== null
        ? (partner?.size?.standardPm ?? 0)
        : 0;
    const cell = entryCell(
      known,
      fresh.list.map(({ entry }) => entry),
      feature.kind,
      view.cells,
      partnerStandardPm,
    );
    const plan = entryNext(feature, cell.readings);
    const key = `${piece.id} ${feature.id}`;
    const gauges = gaugesOf(gaugeWords);
    const gauge = gaugeOf(view, cell, feature.id, gauges[feature.id]);
    const gaugeById = (id: string) => view.sheet.gauges.find((one) => one.id === id) ?? null;
    const slipFacts: Bench['slipFacts'] = (used, { text, unit }, exceptId) =>
      entrySlipFacts({
        view,
        cell,
        feature,
        gauge: used,
        partner,
        unit,
        decimal: gaugeMark(text, used, chosen.decimal),
        ...(exceptId === undefined ? {} : { exceptId }),
      });

    const unit =
      unitOf !== null && unitOf.gaugeId === gauge?.id
        ? unitOf.unit
        : (unitByGauge(gauge) ?? chosen.unit);
    const blindOf = (readings: readonly Standing[]) => {
      const hidden = entryBlind(blindChoice(blindWord), feature, readings);
      return hidden === null || seenSet === `${key} ${hidden.set}` ? null : hidden;
    };
    const blind = blindOf(cell.readings);

    return {
      view,
      chosen,
      where,
      fresh,
      part: part.part,
      piece,
      feature,
      cell,
      plan,
      next:
        picked?.key === key
          ? picked.place
          : (plan.next ?? (blind === null ? null : (cell.readings.at(-1) ?? null))),
      pick: (place) => setPicked(place === null ? null : { key, place }),
      last: cell.readings.at(-1) ?? null,
      held: cell.readings.findLast(({ state }) => state === 'held') ?? null,
      gauge,
      chooseGauge: (id) => sayGauges(JSON.stringify({ ...gauges, [feature.id]: id })),
      unit,
      setUnit: (to) => setUnitOf(gauge === null ? null : { gaugeId: gauge.id, unit: to }),
      partner,
      partnerStandardPm,
      resolutionPm:
        gaugeById(cell.size?.gaugeId ?? '')?.resolutionPm ??
        gauge?.resolutionPm ??
        (chosen.unit === 'mm' ? 1_000_000 : 2_540_000),
      nextCell,
      blind,
      hides: (readings) => blindOf(readings) !== null,
      showSet: () => setSeenSet(`${key} ${blind?.set ?? 0}`),
      lastDigits: lastWord === 'on' && blind === null,
      setLastDigits: (on) => sayLast(on ? 'on' : 'off'),
      lastFacts:
        gauge === null || blind !== null
          ? null
          : {
              unit,
              resolutionPm: gauge.resolutionPm,
              neighboursPm: entryNeighbours(view, cell),
            },
      slipFacts,
      slipOfHeld(held) {
        const used = gaugeById(held.gaugeId);
        if (used === null) return null;
        const facts = slipFacts(used, held, held.id);
        const kind = held.heldAs ?? 'far off';
        const found = slipOf(held, facts);
        const slip = found?.kind === kind ? found : { ...unexplained, kind };
        return { slip, gauge: used, othersPm: facts.othersPm };
      },
    } satisfies Bench;
  }, [
    view,
    chosen,
    where,
    nextCell,
    fresh,
    at,
    picked,
    gaugeWords,
    sayGauges,
    unitOf,
    blindWord,
    lastWord,
    sayLast,
    seenSet,
  ]);
}

const unexplained = {
  insteadPm: null,
  stepPm: null,
  stopsAtPm: null,
  elsewhere: null,
  expected: null,
};

/** The unit a gauge was taught to send in, else the one it is said to read in. */
function unitByGauge(gauge: Gauge | null): LengthUnit | null {
  if (gauge === null) return null;
  return gauge.sendsUnit === 'mm' || gauge.sendsUnit === 'in' ? gauge.sendsUnit : gauge.unit;
}

/** The gauge chosen here for the feature, else the one its last reading was taken with, on this piece first. */
function gaugeOf(
  view: JobView,
  cell: Cell,
  featureId: string,
  remembered: string | undefined,
): Gauge | null {
  const live = (id: string | undefined) =>
    view.sheet.gauges.find((gauge) => gauge.id === id && gauge.struckAt === null);
  return (
    live(remembered) ??
    live(cell.readings.at(-1)?.gaugeId) ??
    live(view.sheet.readings.findLast((reading) => reading.featureId === featureId)?.gaugeId) ??
    null
  );
}

function gaugesOf(words: string | null): Record<string, string> {
  try {
    const parsed: unknown = JSON.parse(words ?? '{}');
    return typeof parsed === 'object' && parsed !== null ? (parsed as Record<string, string>) : {};
  } catch {
    return {};
  }
}

function isDone(view: JobView, { pieceId, featureId }: EntryCell): boolean {
  const feature = view.sheet.features.find(({ id }) => id === featureId);
  if (feature === undefined) return true;
  const cell = view.cell(pieceId, featureId);
  return cell.verdict?.state !== 'to cut' && entryNext(feature, cell.readings).next === null;
}
