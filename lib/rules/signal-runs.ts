import type { ControlChart } from './control-view';
import type { ControlSignal } from './control-signals';

/** A signal that went on from one point to the next: its first point, and how far it lasted. */
export type SignalRun = { first: ControlSignal; last: ControlSignal; points: number };

/** The signals of a chart with those put together that the next point went on with, in the order made. */
export function signalRuns(chart: Pick<ControlChart, 'signals' | 'main'>): SignalRun[] {
  const placeOf = new Map(chart.main.map(({ ordinal }, i) => [ordinal, i]));
  const open = new Map<string, SignalRun>();
  const runs: SignalRun[] = [];
  for (const signal of chart.signals) {
    const key = `${signal.track} ${signal.rule} ${signal.side}`;
    const run = open.get(key);
    const goesOn =
      run !== undefined && placeOf.get(signal.ordinal) === placeOf.get(run.last.ordinal)! + 1;
    if (goesOn) {
      run.last = signal;
      run.points += 1;
      continue;
    }
    const begun = { first: signal, last: signal, points: 1 };
    open.set(key, begun);
    runs.push(begun);
  }
  return runs;
}
