import { shownLength, shownSize, type Shown } from './shown-size';

type RunFacts = {
  feature: { asDrawn: string };
  limits: { lowerPm: number | null; upperPm: number | null };
  pieces: readonly { mark: string }[];
  points: readonly {
    piece: { mark: string };
    size: { valuePm: number; expandedPm: number };
  }[];
};

const stepPm = { mm: 1_000_000, in: 2_540_000 };

/** "12.000 0 / −0.027. 11 of 16 made, each ± 0.001." */
export function runHeadWords({ feature, pieces, points }: RunFacts, shown: Shown): string {
  const made = `${feature.asDrawn}. ${points.length} of ${pieces.length} made`;
  if (points.length === 0) return `${made}.`;
  const doubts = points.map((point) => point.size.expandedPm).sort((a, b) => a - b);
  const expandedPm = doubts[Math.floor(doubts.length / 2)]!;
  const { plusMinus } = shownSize({ valuePm: 0, expandedPm }, stepPm[shown.unit], shown);
  return `${made}, each ± ${plusMinus}.`;
}

/** The chart in a sentence, for those who cannot see it. */
export function runSentence(
  { limits, points }: RunFacts,
  words: { title: string; says: string },
  shown: Shown,
): string {
  const figure = (pm: number) => shownLength(pm, stepPm[shown.unit], shown);
  const unit = shown.unit === 'mm' ? 'millimetres' : 'inches';
  const last = points.at(-1);
  const between =
    limits.lowerPm !== null && limits.upperPm !== null
      ? ` Limits ${figure(limits.lowerPm)} to ${figure(limits.upperPm)} ${unit}.`
      : '';
  const latest =
    last === undefined ? '' : ` Last piece ${last.piece.mark}, ${figure(last.size.valuePm)}.`;
  return `Run chart of ${points.length} pieces.${between}${latest} ${words.title}. ${words.says}`;
}
