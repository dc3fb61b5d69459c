import { expect, it } from 'vitest';
import type { ControlSignal } from '@/lib/rules/control-signals';
import { signalRuns } from '@/lib/rules/signal-runs';

const signal = (ordinal: number, over: Partial<ControlSignal> = {}): ControlSignal => ({
  track: 'main',
  ordinal,
  mark: `W${ordinal}`,
  rule: 'nine on one side',
  side: 'above',
  change: null,
  ...over,
});
// W4 was never measured: W3 and W5 are neighbours on the chart.
const main = [1, 2, 3, 5, 6, 7].map((ordinal) => ({ ordinal }));
const runs = (signals: ControlSignal[]) =>
  signalRuns({ signals, main: main as Parameters<typeof signalRuns>[0]['main'] }).map(
    ({ first, last, points }) => `${first.mark} ${last.mark} ${points}`,
  );

it('puts together what the next point went on with, over a piece that was not measured', () => {
  expect(runs([2, 3, 5].map((n) => signal(n)))).toEqual(['W2 W5 3']);
});

it('keeps apart what stopped and began again, another side, another rule, and the scatter', () => {
  expect(runs([signal(1), signal(3)])).toEqual(['W1 W1 1', 'W3 W3 1']);
  expect(
    runs([
      signal(1),
      signal(2, { side: 'below' }),
      signal(2, { rule: 'limit' }),
      signal(2, { track: 'spread' }),
      signal(2),
    ]),
  ).toEqual(['W1 W2 2', 'W2 W2 1', 'W2 W2 1', 'W2 W2 1']);
});
