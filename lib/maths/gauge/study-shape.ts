import { refuse, requireAtLeast, requireFinite } from '../control/guards';

/** Readings of a gauge study: `readings[part][operator][trial]`, any one unit, no gaps. */
export type StudyReadings = readonly (readonly (readonly number[])[])[];

export type StudyShape = { parts: number; operators: number; trials: number };

/**
 * Counts the parts, operators and trials of a gauge study, and refuses one with gaps.
 *
 * At least two of each. Cost: O(readings).
 *
 * @throws {MathsInputError} `<caller>/too-few`, `<caller>/shape`, `<caller>/not-finite`
 *
 * @example
 * studyShape('gaugeStudyByRange', [[[1, 2], [1, 2]], [[3, 4], [3, 4]]]);
 * // { parts: 2, operators: 2, trials: 2 }
 */
export function studyShape(caller: string, readings: StudyReadings): StudyShape {
  const parts = readings.length;
  const operators = readings[0]?.length ?? 0;
  const trials = readings[0]?.[0]?.length ?? 0;
  requireAtLeast(caller, 'parts', parts, 2);
  requireAtLeast(caller, 'operators', operators, 2);
  requireAtLeast(caller, 'trials', trials, 2);
  readings.forEach((byOperator, p) => {
    const even =
      byOperator.length === operators && byOperator.every((cell) => cell.length === trials);
    if (!even) {
      const wanted = `${operators} operators of ${trials} trials for every part`;
      throw refuse(caller, 'shape', `${wanted}, got another shape at part ${p}`);
    }
    for (const cell of byOperator) requireFinite(caller, `readings at part ${p}`, cell);
  });
  return { parts, operators, trials };
}
