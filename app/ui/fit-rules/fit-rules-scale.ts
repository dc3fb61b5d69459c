import { tickLadder, type TickLadder } from '../strip/tick-ladder';
import type { FitRulesData } from './fit-rules-data';

export type FitRulesScale = {
  /** Both ends of the internal rule, pm; the external one shows this less the aim. */
  fromPm: number;
  toPm: number;
  ladder: TickLadder;
  pxPerPm: number;
  /** Where an internal size stands, px. */
  internalX: (pm: number) => number;
  /** Where an external size stands: slid over by the aim, so that a pair at its aim stands plumb. */
  externalX: (pm: number) => number;
};

const padShare = 0.05;

/** One scale for both rules: every piece with its bar, both zones and every target, and 5 % at each end. */
export function fitRulesScale(
  data: FitRulesData,
  axis: { fromPx: number; toPx: number },
  numeralPx: number,
): FitRulesScale {
  const { aimPm, internal, external, toMake } = data;
  const targetsOf = (side: 'internal' | 'external') =>
    toMake.flatMap(({ make = 'external', targetPm }) => (make === side ? [targetPm] : []));
  const covered = [
    ...sideSizes(internal),
    ...targetsOf('internal'),
    ...[...sideSizes(external), ...targetsOf('external')].map((pm) => pm + aimPm),
  ];
  if (covered.length === 0) covered.push(0);
  let fromPm = Math.min(...covered);
  let toPm = Math.max(...covered);
  const leastPm = 10 * (data.resolutionPm ?? 1_000_000);
  const padPm = Math.max(padShare * (toPm - fromPm), (leastPm - (toPm - fromPm)) / 2, 0);
  fromPm -= padPm;
  toPm += padPm;

  const widthPx = axis.toPx - axis.fromPx;
  const ladderOf = () =>
    tickLadder({
      unit: data.unit,
      resolutionPm: data.resolutionPm,
      pxPerPm: widthPx / (toPm - fromPm),
      longestPm: toPm,
      numeralPx,
      numeralGapPx: 56,
    });
  let ladder = ladderOf();
  for (let round = 0; round < 3; round += 1) {
    fromPm = Math.floor(fromPm / ladder.minorPm) * ladder.minorPm;
    toPm = Math.ceil(toPm / ladder.minorPm) * ladder.minorPm;
    ladder = ladderOf();
  }
  const pxPerPm = widthPx / (toPm - fromPm);
  const internalX = (pm: number) => axis.fromPx + (pm - fromPm) * pxPerPm;
  return { fromPm, toPm, ladder, pxPerPm, internalX, externalX: (pm) => internalX(pm + aimPm) };
}

function sideSizes({ lowerPm, upperPm, pieces }: FitRulesData['internal']): number[] {
  return [
    ...[lowerPm, upperPm].filter((pm) => pm !== null),
    ...pieces.flatMap(({ sizePm, expandedPm }) => [sizePm - expandedPm, sizePm + expandedPm]),
  ];
}
