import type { CutChange } from '@/lib/schema/fit';
import type { Feature } from '@/lib/schema/feature';
import type { Part, Piece } from '@/lib/schema/part';
import { cellKey, counted, type Cell } from '../cells';
import { gaugeForTarget } from '../gauge-for-target';
import { governingSize } from '../governing-size';
import { materialOf } from '../heat/material-of';
import type { JobView } from '../job-view';
import { sizeOf } from '../size';
import type { Standing } from '../standing';
import { cutAim, type CutAim } from './cut-aim';
import { cutSteps, type CutStep } from './cut-steps';
import { cutsElsewhere, nothingElsewhere, type ChangeElsewhere } from './cuts-elsewhere';
import { expectedSize, type ExpectedSize } from './expected-size';
import type { GaugeEnough } from './gauge-enough';
import { learnedCuts, type LearnedCuts } from './learned-cuts';
import { leftToCut, nextCutAdvice, type CutAdvice } from './next-cut-advice';
import { pastChoices, type PastChoices } from './past-choices';
import type { Slide } from './slide';
import { warmPiece, type WarmPiece } from './warm-piece';

/** What the person at the machine has said and no reading tells. */
export type CutSaid = {
  slide: Slide | null;
  /** Left on for lapping, on diameter, pm. */
  lapPm: number;
  /** Changed since the last cut, and not noted with one yet. */
  changed: CutChange | null;
  /** Of the piece, when it was measured. */
  temperatureMilliC: number | null;
};

/** Everything the Cut screen says of one feature of one piece. Lengths in pm, on diameter. */
export type CutView = {
  part: Part;
  piece: Piece;
  feature: Feature;
  cell: Cell;
  aim: CutAim;
  /** Down (a bore: up) to where cutting ends, lapping left on. */
  turnToPm: number;
  /** Null while it is not measured since the last cut. */
  leftPm: number | null;
  /** A reading waits for somebody to say whether it counts. */
  held: boolean;
  steps: CutStep[];
  learnt: LearnedCuts;
  /** What was changed on another piece since the first of these cuts, so that they teach no more. */
  changedElsewhere: ChangeElsewhere | null;
  advice: CutAdvice;
  /** After the cut proposed; null while nothing can be foretold. */
  expected: ExpectedSize | null;
  warm: WarmPiece;
  gauge: GaugeEnough | null;
  /** What can become of it, where it is past its stop. */
  choices: PastChoices | null;
  /** The step in which its sizes are shown. */
  resolutionPm: number;
};

/** Works out the Cut screen of one feature of one piece; null where there is nothing to cut to. */
export function cutView(
  view: JobView,
  at: { pieceId: string; featureId: string },
  said: CutSaid,
): CutView | null {
  const { pieceId, featureId } = at;
  const piece = view.sheet.pieces.find(({ id }) => id === pieceId);
  const part = view.sheet.parts.find(({ id }) => id === piece?.partId);
  const feature = view.sheet.features.find(({ id }) => id === featureId);
  if (piece === undefined || part === undefined || feature === undefined) return null;
  const aim = cutAim(view, pieceId, featureId);
  if (aim === null) return null;
  const cell = view.cell(pieceId, featureId);
  const seqs = new Map(view.sheet.readings.map(({ id, seq }) => [id, seq]));
  const steps = cutSteps({
    cell,
    cuts: view.sheet.cuts,
    pieceId,
    featureId,
    side: aim.side,
    seqOf: (id) => seqs.get(id),
    sizeOf: sizeFrom(view, cell, aim),
  });
  const { slide, lapPm } = said;
  const { now } = aim;
  const resolutionPm = resolutionFrom(view, cell, aim);
  const warmAt = (sizePm: number, temperatureMilliC: number | null) =>
    warmPiece({
      sizePm,
      temperatureMilliC,
      expansionPerC: expansionPerC(part, view),
      bandPm: aim.limits.upperPm - aim.limits.lowerPm,
      resolutionPm,
    });
  // Without a slide no dial is said, and nothing of other pieces is looked at: the Bench asks so at every reading.
  const elsewhere =
    slide === null
      ? nothingElsewhere
      : cutsElsewhere({
          ...view.sheet,
          ...at,
          side: aim.side,
          slide,
          cellOf: (p, f) => view.cells.byKey.get(cellKey(p, f)),
          seqOf: (id) => seqs.get(id),
          sizeOf: (one) => sizeFrom(view, one, aim),
          isTooWarm: (sizePm, milliC) => {
            const { kind } = warmAt(sizePm, milliC);
            return kind === 'wait' || kind === 'not known';
          },
        });
  const learnt = learnedCuts(steps, aim.side, slide ?? anySlide, said.changed !== null, {
    elsewhere,
    nowPm: now?.valuePm ?? null,
  });
  const advice = nextCutAdvice({ aim, lapPm, steps, learnt, slide });
  return {
    part,
    piece,
    feature,
    cell,
    aim,
    turnToPm: aim.side === 'external' ? aim.aimPm + lapPm : aim.aimPm - lapPm,
    leftPm: leftToCut(aim, lapPm),
    held: cell.readings.some(({ state }) => state === 'held'),
    steps,
    learnt,
    changedElsewhere: elsewhere.changed,
    advice,
    expected: advice.kind === 'cut' ? foretold(aim, learnt, advice.askedPm) : null,
    warm: warmAt(now?.valuePm ?? aim.aimPm, said.temperatureMilliC),
    gauge: gaugeForTarget(
      { own: aim.now, partner: aim.partner?.size ?? null },
      aim.limits,
      view.cells.gauges,
    ),
    choices: advice.kind === 'past' ? pastChoices(aim, pieceId) : null,
    resolutionPm,
  };
}

/** The size some other amount would leave, for a person who puts on what was not proposed. */
export function foretold(aim: CutAim, learnt: LearnedCuts, askedPm: number): ExpectedSize | null {
  if (aim.now === null) return null;
  return expectedSize({
    now: aim.now,
    side: aim.side,
    askedPm,
    learned: learnt.learned,
    askedBeforePm: learnt.steps.map((step) => step.askedPm!),
  });
}

/** By the shop's own materials, then the table; null where the part's material is in neither. */
function expansionPerC({ material }: Part, { sheet }: JobView): number | null {
  const found = materialOf(material, sheet.materials);
  return found === null ? null : found.material.expansionNanoPerC / 1e9;
}

/** Ratios do not depend on the dial; while no slide is known, any will do to learn them. */
const anySlide = { dial: 'diameter', divisionPm: 1, fineFeed: 1, bitesPm: 0 } as const;

function sizeFrom(view: JobView, cell: Cell, { side, partner }: CutAim) {
  const { gauges, history } = view.cells;
  const governs = partner?.fit.fit.governs ?? 'extreme';
  return (readings: readonly Standing[]): number | null => {
    const own = { ...cell, readings: [...readings], size: sizeOf(readings, gauges, history) };
    return (
      governingSize(own, side, governs, gauges, history)?.valuePm ??
      counted(readings).at(-1)?.valuePm ??
      null
    );
  };
}

function resolutionFrom(view: JobView, cell: Cell, { partner, now }: CutAim): number {
  const ids = [
    now?.gaugeId,
    [...cell.earlier, ...cell.readings].at(-1)?.gaugeId,
    partner?.size.gaugeId,
  ];
  const known = ids.flatMap((id) => (id === undefined ? [] : (view.cells.gauges.get(id) ?? [])));
  return known[0]?.resolutionPm ?? (view.sheet.job.unit === 'mm' ? 1_000_000 : 2_540_000);
}
