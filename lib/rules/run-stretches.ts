import { startsAfresh, type RunPoint, type RunView } from './run-view';

/** The measured pieces between one event that starts the drift afresh and the next, in the order made. */
export function stretchesOf(view: Pick<RunView, 'points' | 'events'>): RunPoint[][] {
  const after = freshTurns(view.events);
  const made: RunPoint[][] = [];
  let [passed, before] = [0, -1];
  for (const point of view.points) {
    while (passed < after.length && after[passed]! < point.ordinal) passed += 1;
    if (passed !== before) made.push([]);
    before = passed;
    made.at(-1)!.push(point);
  }
  return made;
}

/** The turns after which the drift starts afresh, each once, rising. */
export function freshTurns(events: RunView['events']): number[] {
  const turns = events.filter(({ kind }) => startsAfresh.has(kind)).map((one) => one.afterOrdinal);
  return [...new Set(turns)].sort((a, b) => a - b);
}
