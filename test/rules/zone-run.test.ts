import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { zoneRun, type ZoneFacts, type ZoneMeaning } from '@/lib/rules/zone-run';
import type { Piece } from '@/lib/schema/part';
import type { RunEvent } from '@/lib/schema/run';
import { um } from './make';

// Limits 0 and 40 micrometres: the middle half is 10 to 30. Sizes in micrometres, null for not measured.
const limits = { lowerPm: 0, upperPm: 40 * um };

function zones(
  sizesUm: readonly (number | null)[],
  more: { events?: [after: number, kind: RunEvent['kind']][]; batch?: number } & Partial<
    Pick<ZoneFacts, 'run' | 'drift'>
  > = {},
) {
  const { events = [], batch = 60, run = { dial: 'radius', divisionPm: um }, drift = null } = more;
  const pieces = Array.from({ length: batch }, (_, i) => pieceOf(i + 1));
  const facts: ZoneFacts = {
    run,
    pieces,
    points: sizesUm.flatMap((size, i) =>
      size === null ? [] : [{ piece: pieces[i]!, size: { valuePm: Math.round(size * um) } }],
    ),
    events: events.map(([afterOrdinal, kind], i) => eventOf(i, afterOrdinal, kind)),
    limits,
    drift,
  };
  return zoneRun(facts)!;
}

function pieceOf(ordinal: number): Piece {
  return {
    id: `piece ${ordinal}`,
    version: 1,
    createdAt: '2026-03-14T10:00:00Z',
    struckAt: null,
    jobId: 'job',
    partId: 'part',
    ordinal,
    mark: `W${ordinal}`,
    note: '',
  };
}

function eventOf(i: number, afterOrdinal: number, kind: RunEvent['kind']): RunEvent {
  return {
    id: `event ${i}`,
    version: 1,
    createdAt: '2026-03-14T10:00:00Z',
    struckAt: null,
    jobId: 'job',
    runId: 'run',
    afterOrdinal,
    kind,
    note: '',
    offsetPm: null,
    offsetDial: null,
    at: '2026-03-14T10:00:00Z',
  };
}

const meanings = (run: ReturnType<typeof zones>) => run.steps.map(({ means }) => means);
const five = [20, 21, 19, 20, 22];

describe('zoneRun', () => {
  it('asks for the first piece while nothing is measured', () => {
    const fresh = zones([]);
    expect(fresh).toMatchObject({ state: 'set up', inARow: 0, nextOrdinal: 1, move: null });
  });

  it('lets the batch run after five in a row in the middle half', () => {
    const four = zones(five.slice(0, 4));
    expect(four).toMatchObject({ state: 'set up', inARow: 4, nextOrdinal: 5 });
    const run = zones(five);
    expect(meanings(run)).toEqual(['counts', 'counts', 'counts', 'counts', 'approves']);
    expect(run.state).toBe('run');
  });

  it('agrees with the set-up and the samples of precontrol.json, step by step', () => {
    // test/reference/precontrol.json: rules after Satterthwaite (1954) and Shainin.
    const set = JSON.parse(readFileSync('test/reference/precontrol.json', 'utf8')) as {
      cases: {
        inputs: { kind: string; lower: number; upper: number; x: number[] };
        expected: { steps: string[] };
      }[];
    };
    const cases = set.cases.filter(({ inputs }) => inputs.kind === 'set_up');
    expect(cases.length).toBeGreaterThan(1);
    for (const { inputs, expected } of cases) {
      const scaled = inputs.x.map((x) => ((x - inputs.lower) / (inputs.upper - inputs.lower)) * 40);
      const upTo = zones(scaled).steps.slice(0, expected.steps.length);
      const said = upTo.map(({ means, inARow }) =>
        means === 'counts' || means === 'approves'
          ? `green ${inARow}`
          : means === 'starts again'
            ? 'yellow: start again'
            : 'adjust',
      );
      const wanted = expected.steps.map((step) => (step.includes('adjust') ? 'adjust' : step));
      expect(said).toEqual(wanted);
    }
  });

  it('starts the count again after one outside the middle half', () => {
    const run = zones([20, 20, 35, 20]);
    expect(meanings(run)).toEqual(['counts', 'counts', 'starts again', 'counts']);
    expect(run).toMatchObject({ state: 'set up', inARow: 1 });
  });

  it('does not take pieces for a row that had one between them unmeasured', () => {
    const run = zones([20, 20, 20, null, 20, 20]);
    expect(run).toMatchObject({ state: 'set up', inARow: 2 });
    expect(zones([20, 20, 20, null, 20, 20, 20, 20, 20]).state).toBe('run');
    // Two outside, but not one after the other: the second starts a count of its own.
    expect(meanings(zones([35, null, 35]))).toEqual(['starts again', 'starts again']);
  });

  it('moves the mean by the middle less the mean of the two, to whole divisions of the dial', () => {
    // Both high, 34 and 38: 36 on average, 16 above the middle; 8 on a radius dial.
    const high = zones([...five, 34, 38]);
    expect(meanings(high).slice(-2)).toEqual(['second wanted', 'move the mean']);
    expect(high).toMatchObject({
      state: 'stop',
      move: { onDiameterPm: -16 * um, onDialPm: -8 * um },
    });
    const low = zones([4, 5], { run: { dial: 'diameter', divisionPm: 10 * um } });
    // 15.5 up, the nearest whole division is 20.
    expect(low.move).toEqual({ onDiameterPm: 20 * um, onDialPm: 20 * um });
  });

  it('gives no move that is less than half a division', () => {
    expect(zones([9, 9], { run: { dial: 'diameter', divisionPm: 50 * um } }).move).toBeNull();
  });

  it('stops without a move for two on opposite sides, and for one outside', () => {
    const opposite = zones([...five, 34, 4]);
    expect(opposite).toMatchObject({ state: 'stop', move: null });
    expect(opposite.steps.at(-1)!.means).toBe<ZoneMeaning>('spread too large');
    const outside = zones([...five, 41]);
    expect(outside).toMatchObject({ state: 'stop', move: null });
    expect(outside.steps.at(-1)!.means).toBe<ZoneMeaning>('outside');
    expect(zones([...five, 34, 41]).steps.at(-1)!.means).toBe<ZoneMeaning>('outside');
    expect(zones([-1]).state).toBe('stop');
  });

  it('waits for the very next piece after one outside the middle half, and goes on if that is good', () => {
    const waiting = zones([...five, 34]);
    expect(waiting).toMatchObject({ state: 'second', nextOrdinal: 7 });
    expect(zones([...five, 34, 20])).toMatchObject({ state: 'run' });
  });

  it('is set up anew after an adjustment, and after a stop that nobody noted one for', () => {
    const moved = zones([...five, 34, 38], { events: [[7, 'offset moved']] });
    expect(moved).toMatchObject({ state: 'set up', inARow: 0, move: null, nextOrdinal: 8 });
    const silent = zones([...five, 34, 38, 20]);
    expect(silent).toMatchObject({ state: 'set up', inARow: 1 });
    expect(silent.steps.at(-1)!.phase).toBe('set up');
    // A break moves nothing.
    expect(zones([...five, 20], { events: [[5, 'break']] }).state).toBe('run');
  });

  it('learns how often to sample from the pieces between adjustments', () => {
    const run = zones(
      Array.from({ length: 43 }, () => 20),
      {
        events: [
          [13, 'offset moved'],
          [37, 'insert changed'],
        ],
      },
    );
    // 24 pieces from one to the next: every fourth. Five after the last, then 43 and 47.
    expect(run.gap).toEqual({ meanGap: 24, samplePieces: 4 });
    expect(run).toMatchObject({ state: 'run', nextOrdinal: 47 });
    expect(zones([...five, 20]).gap).toBeNull();
    expect(zones([...five, 20]).nextOrdinal).toBe(7);
  });

  it('does not learn it from moves made while setting up', () => {
    const sizes = Array.from({ length: 30 }, () => 20);
    const found = zones(sizes, {
      events: [
        [2, 'offset moved'],
        [5, 'offset moved'],
      ],
    });
    // Twenty-five since the last of them, set up and running.
    expect(found).toMatchObject({ state: 'run', gap: { meanGap: 25, samplePieces: 4 } });
  });

  it('is set up anew after an adjustment that was noted behind the last piece measured', () => {
    const sizes = Array.from({ length: 20 }, () => 20);
    expect(zones(sizes).state).toBe('run');
    expect(zones(sizes, { batch: 40, events: [[23, 'insert changed']] })).toMatchObject({
      state: 'set up',
      inARow: 0,
    });
  });

  it('counts the gap from the first of a sample of two', () => {
    const sizes: (number | null)[] = Array.from({ length: 42 }, () => 20);
    const run = zones([...sizes, 34, 20], {
      events: [
        [13, 'offset moved'],
        [37, 're-chucked'],
      ],
    });
    expect(run).toMatchObject({ state: 'run', nextOrdinal: 47 });
  });

  it('measures each piece, and leaves none out, where it keeps for no more than six', () => {
    const sizes = Array.from({ length: 19 }, () => 20);
    const events: [number, RunEvent['kind']][] = [
      [7, 'offset moved'],
      [14, 'offset moved'],
    ];
    expect(zones(sizes, { events })).toMatchObject({
      gap: { meanGap: 7, samplePieces: 1 },
      nextOrdinal: 20,
    });
    // The second of a sample of two was good: not the same piece again, and not the one after next.
    expect(zones([...sizes, 34, 20], { events })).toMatchObject({ state: 'run', nextOrdinal: 22 });
  });

  it('knows no next piece when the batch is done', () => {
    expect(zones(five, { batch: 5 }).nextOrdinal).toBeNull();
  });

  it('says whether the scatter leaves room for zones at all', () => {
    // T / (6 s) = 40 / (6 x 5).
    const drift = { kind: 'line', scatterMm: 0.005 } as const;
    expect(zones(five, { drift }).spreadFits).toBeCloseTo(40 / 30, 12);
    expect(zones(five).spreadFits).toBeNull();
  });

  it('has nothing to say where a limit is missing', () => {
    const facts = {
      run: { dial: 'radius', divisionPm: um },
      pieces: [],
      points: [],
      events: [],
      drift: null,
    } as const;
    expect(zoneRun({ ...facts, limits: { lowerPm: null, upperPm: um } })).toBeNull();
    expect(zoneRun({ ...facts, limits: { lowerPm: 0, upperPm: null } })).toBeNull();
  });
});
