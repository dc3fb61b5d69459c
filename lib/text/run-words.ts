import { capital } from './capital';
import { chartStepPm } from './chart-step';
import { countWord } from './drift-words';
import { shownLength, shownSize, type Shown } from './shown-size';
import { turnWord } from './turn-word';

type RunFacts = {
  feature: { asDrawn: string };
  features: readonly { partId: string }[];
  limits: { lowerPm: number | null; upperPm: number | null };
  pieces: readonly { mark: string }[];
  points: readonly {
    mark: string;
    valuePm: number;
    size: { expandedPm: number; gaugeId: string };
  }[];
};

/** "12.000 0 / −0.027. 11 of 16 made, each ± 0.001, Mic 2." A gauge is named where it alone told them. */
export function runHeadWords(
  { feature, features, pieces, points }: RunFacts,
  shown: Shown,
  gauges: readonly { id: string; name: string }[],
): string {
  const what =
    features.length === 1
      ? feature.asDrawn
      : `${capital(countWord(features.length))} features alike, each from its own nominal`;
  const made = `${what}. ${points.length} of ${pieces.length}${turnWord(features) === 'turn' ? ' turns' : ''} made`;
  if (points.length === 0) return `${made}.`;
  const doubts = points.map((point) => point.size.expandedPm).sort((a, b) => a - b);
  const expandedPm = doubts[Math.floor(doubts.length / 2)]!;
  const { plusMinus } = shownSize({ valuePm: 0, expandedPm }, chartStepPm[shown.unit], shown);
  const told = gauges.filter(({ id }) => points.some(({ size }) => size.gaugeId === id));
  return `${made}, each ± ${plusMinus}${told.length === 1 ? `, ${told[0]!.name}` : ''}.`;
}

/** Why no run can be started: the job has no feature yet, or each has its run. */
export function noMoreRunsWords(isEmpty: boolean): string {
  return isEmpty
    ? 'This job has no feature yet that could be measured.'
    : 'Every feature of this job has its run.';
}

/** The chart in a sentence, for those who cannot see it. */
export function runSentence(
  { features, limits, points }: RunFacts,
  words: { title: string; says: string },
  shown: Shown,
): string {
  const sign = features.length === 1 ? 'needed' : 'always';
  const figure = (pm: number) => shownLength(pm, chartStepPm[shown.unit], shown, sign);
  const unit = shown.unit === 'mm' ? 'millimetres' : 'inches';
  const last = points.at(-1);
  const between =
    limits.lowerPm !== null && limits.upperPm !== null
      ? ` Limits ${figure(limits.lowerPm)} to ${figure(limits.upperPm)} ${unit}.`
      : '';
  const latest =
    last === undefined ? '' : ` Last ${turnWord(features)} ${last.mark}, ${figure(last.valuePm)}.`;
  const count = `${points.length} ${turnWord(features)}${points.length === 1 ? '' : 's'}`;
  return `Run chart of ${count}.${between}${latest} ${words.title}. ${words.says}`;
}
