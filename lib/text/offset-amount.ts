import { chartStepPm } from './chart-step';
import { shownLength, type Shown } from './shown-size';

/** An offset as it was put in, with its sign: to the step of the chart, or a place finer where it was put in finer. */
export function offsetAmount(pm: number, shown: Shown): string {
  const stepPm = chartStepPm[shown.unit];
  const isFiner = pm % stepPm !== 0 && pm % (stepPm / 10) === 0;
  return shownLength(pm, isFiner ? stepPm / 10 : stepPm, shown, 'always');
}
