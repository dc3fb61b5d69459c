import { fUpperTail } from '../distributions/f-upper-tail';
import { mean } from '../statistics/mean';
import { studyShape, type StudyReadings } from './study-shape';

export type AnovaRow = {
  degreesOfFreedom: number;
  sumOfSquares: number;
  meanSquare: number;
  /** Ratio to the mean square it is judged against, and its chance. Left out when that is 0. */
  f?: number;
  p?: number;
};

export type CrossedAnova = {
  parts: number;
  operators: number;
  trials: number;
  part: AnovaRow;
  operator: AnovaRow;
  interaction: AnovaRow;
  repeatability: AnovaRow;
  total: { degreesOfFreedom: number; sumOfSquares: number };
};

/**
 * Analysis of variance of parts crossed with operators, repeated, all three random.
 *
 * Part and operator are judged against the interaction, the interaction against the repeats. Sums of
 * squares are taken about the means, in which a large common size cancels.
 *
 * Limits: every operator measures every part equally often. Cost: O(readings). Sources:
 * [iso-22514-7], [montgomery-sqc].
 *
 * @throws {MathsInputError} `crossed-anova/too-few`, `crossed-anova/shape`, `crossed-anova/not-finite`
 *
 * @example
 * crossedAnova([[[1, 2], [1, 2]], [[5, 6], [5, 7]]]).part.degreesOfFreedom; // 1
 */
export function crossedAnova(readings: StudyReadings): CrossedAnova {
  const { parts, operators, trials } = studyShape('crossedAnova', readings);
  const first = readings[0]![0]![0]!;
  const off = readings.map((part) => part.map((cell) => cell.map((value) => value - first)));
  const grand = mean(off.flat(2));
  const cellMeans = off.map((part) => part.map((cell) => mean(cell)));
  const partMeans = off.map((part) => mean(part.flat()));
  const operatorMeans = Array.from({ length: operators }, (_, o) =>
    mean(off.flatMap((part) => part[o]!)),
  );

  const ofParts = operators * trials * sumOfSquares(partMeans.map((value) => value - grand));
  const ofOperators = parts * trials * sumOfSquares(operatorMeans.map((value) => value - grand));
  const ofInteraction =
    trials *
    sumOfSquares(
      cellMeans.flatMap((ofPart, p) =>
        ofPart.map((value, o) => value - partMeans[p]! - operatorMeans[o]! + grand),
      ),
    );
  const ofRepeats = sumOfSquares(
    off.flatMap((part, p) =>
      part.flatMap((cell, o) => cell.map((value) => value - cellMeans[p]![o]!)),
    ),
  );
  const all = sumOfSquares(off.flat(2).map((value) => value - grand));

  const repeatability = row(ofRepeats, parts * operators * (trials - 1));
  const interaction = row(ofInteraction, (parts - 1) * (operators - 1), repeatability);
  return {
    parts,
    operators,
    trials,
    part: row(ofParts, parts - 1, interaction),
    operator: row(ofOperators, operators - 1, interaction),
    interaction,
    repeatability,
    total: { degreesOfFreedom: parts * operators * trials - 1, sumOfSquares: all },
  };
}

function row(sum: number, degreesOfFreedom: number, against?: AnovaRow): AnovaRow {
  const meanSquare = sum / degreesOfFreedom;
  const plain = { degreesOfFreedom, sumOfSquares: sum, meanSquare };
  if (against === undefined || !(against.meanSquare > 0)) return plain;
  const f = meanSquare / against.meanSquare;
  return { ...plain, f, p: fUpperTail(f, degreesOfFreedom, against.degreesOfFreedom) };
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}
