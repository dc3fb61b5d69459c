import { describe, expect, it } from 'vitest';
import type { ControlGroup } from '@/lib/rules/control-groups';
import { controlSignals } from '@/lib/rules/control-signals';
import { controlTracks } from '@/lib/rules/control-tracks';
import { controlView, type ControlChart, type ControlView } from '@/lib/rules/control-view';
import { usualChartSettings } from '@/lib/schema/chart-settings';
import { ControlKind, type PatternRule, type Run } from '@/lib/schema/run';
import individuals from '../reference/charts_individuals.json';
import subgroups from '../reference/charts_subgroups.json';
import sums from '../reference/charts_ewma_cusum.json';
import { vane } from '../maths/control/vane';
import { correctionOf } from './make';
import { smallRun, wander, type SmallRun } from './small-run';

// Published examples are entered as micrometres from the nominal, one piece a value.
const um = 1000;
const of = (small: SmallRun): ControlView => controlView(smallRun(small));
function chart(small: SmallRun): ControlChart {
  const view = of(small);
  if (view.kind !== 'chart') throw new Error(JSON.stringify(view));
  return view;
}
const marks = ({ signals }: ControlChart, rule: PatternRule | 'limit', track = 'main') =>
  signals.filter((one) => one.rule === rule && one.track === track).map(({ mark }) => mark);
const singles: Partial<Run> = { control: 'single pieces' };

describe('a chart of single pieces', () => {
  // e-Handbook 6.3.2.2, flow rate; the printed limits were worked with d2 rounded to 1.128.
  const { inputs, expected, published } = individuals.cases[0] as {
    inputs: { x: number[] };
    expected: Record<string, number>;
    published: Record<string, number>;
  };
  const found = chart({ sizes: inputs.x, run: singles });

  it('has the published limits', () => {
    expect(found.main[0]!.centreMm * um).toBeCloseTo(published['xbar']!, 9);
    expect(found.main[0]!.upperMm * um).toBeCloseTo(expected['ucl_x']!, 8);
    expect(found.main[0]!.lowerMm * um).toBeCloseTo(expected['lcl_x']!, 8);
    expect(Math.abs(found.main[0]!.upperMm * um - published['ucl_x']!)).toBeLessThan(0.002);
    expect(found.spread![0]!.upperMm * um).toBeCloseTo(expected['ucl_mr']!, 8);
    expect(found.spread![0]!.centreMm * um).toBeCloseTo(expected['mr_bar']!, 8);
  });

  it('plots each piece and each range once, and calls ten of them trial limits', () => {
    expect(found.main.map(({ valueMm }) => Math.round(valueMm * 1e4) / 10)).toEqual(inputs.x);
    expect(found.spread).toHaveLength(9);
    expect(found).toMatchObject({ trial: true, base: { from: 1, to: 10, count: 10 } });
    expect(chart({ sizes: [...inputs.x, ...inputs.x], run: singles }).trial).toBe(false);
  });

  it('takes its limits from the chosen stretch and judges every piece by them', () => {
    const sizes = [...inputs.x, 90, 20];
    const chosen = chart({ sizes, run: { ...singles, baseFrom: 1, baseTo: 10 } });
    expect(chosen.main[11]!.upperMm).toBeCloseTo(found.main[0]!.upperMm, 12);
    expect(marks(chosen, 'beyond three sigma')).toEqual(['W11', 'W12']);
    expect(chosen.signals[0]).toMatchObject({ side: 'above', track: 'main', ordinal: 11 });
    expect(marks(chosen, 'limit', 'spread')).toEqual(['W11', 'W12']);
  });

  it('takes no range and no pattern over an event that starts afresh, and both over a break', () => {
    const sizes = [...inputs.x.map((x) => x - 20), ...inputs.x];
    const at = (kind: 'offset moved' | 'break') =>
      chart({ sizes, run: singles, events: [{ kind, afterOrdinal: 10 }] });
    expect(at('offset moved').spread!.map(({ ordinal }) => ordinal)).not.toContain(11);
    expect(at('break').spread!.map(({ ordinal }) => ordinal)).toContain(11);
    expect(at('offset moved').limits.sigmaMm).toBeCloseTo(found.limits.sigmaMm, 12);
  });

  it('leaves gaps as gaps', () => {
    const gapped = chart({ sizes: [50, 51, null, 49, 50.5, null, 48], run: singles });
    expect(gapped.main.map(({ ordinal }) => ordinal)).toEqual([1, 2, 4, 5, 7]);
  });

  it('does only the rules that are switched on', () => {
    const rising = wander(8, 0.2).map((off, i) => off / 10 + i);
    const run = (patterns: PatternRule[]) =>
      chart({
        sizes: [...wander(20, 1), ...rising.map((v) => v + 0.5)],
        run: { ...singles, patterns, baseFrom: 1, baseTo: 20 },
      });
    expect(run([]).signals.filter(({ track }) => track === 'main')).toEqual([]);
    const six = run(['six rising or falling']);
    expect(marks(six, 'six rising or falling').at(-1)).toBe('W28');
    expect(six.signals.every(({ rule }) => rule !== 'beyond three sigma')).toBe(true);
    expect(six.signals.find(({ rule }) => rule === 'six rising or falling')!.side).toBe('above');
  });
});

describe('a chart of means', () => {
  const pieces = vane.flat();
  const run = (control: Run['control']): Partial<Run> => ({ control, together: 5 });
  const { published } = subgroups.cases[0] as unknown as {
    published: Record<'xbar_r' | 'r_chart' | 's_chart', { ucl: number; lcl: number }>;
  };

  it('has the published limits and points of the vane opening, with ranges', () => {
    // Montgomery and Runger, table 16-1 and figure 16-8: 33.32, 5.8; means 6, 8, 11 and 19 are out.
    const found = chart({ sizes: pieces, run: run('mean and range'), of: 120 });
    expect(found.main).toHaveLength(20);
    expect(found.main[0]!.centreMm * um).toBeCloseTo(33.32, 9);
    expect(found.spread![0]!.centreMm * um).toBeCloseTo(5.8, 9);
    expect(Math.abs(found.main[0]!.upperMm * um - published.xbar_r.ucl)).toBeLessThan(0.006);
    expect(Math.abs(found.main[0]!.lowerMm * um - published.xbar_r.lcl)).toBeLessThan(0.006);
    expect(Math.abs(found.spread![0]!.upperMm * um - published.r_chart.ucl)).toBeLessThan(0.006);
    expect(found.spread![0]!.lowerMm).toBe(published.r_chart.lcl);
    expect(marks(found, 'beyond three sigma')).toEqual([
      'W26 to W30',
      'W36 to W40',
      'W51 to W55',
      'W91 to W95',
    ]);
    // Figure 16-8: the range of sample 9 is out.
    expect(marks(found, 'limit', 'spread')).toEqual(['W41 to W45']);
    expect(found).toMatchObject({ trial: false, grouped: true, base: { count: 20 } });
  });

  it('has them with s too', () => {
    const found = chart({ sizes: pieces, run: run('mean and s'), of: 120 });
    expect(found.spread![0]!.centreMm * um).toBeCloseTo(2.345, 3);
    expect(Math.abs(found.spread![0]!.upperMm * um - published.s_chart.ucl)).toBeLessThan(0.006);
    expect(marks(found, 'limit', 'spread')).toEqual(['W41 to W45']);
  });

  it('waits for a group that is still being made, and says which lacks a piece', () => {
    const found = chart({
      sizes: vane.slice(0, 4).flat().slice(0, 17),
      run: run('mean and range'),
      corrections: () => [correctionOf(8, { kind: 'void', reason: 'dropped' })],
    });
    expect(found.groups.map(({ mark }) => mark)).toEqual(['W1 to W5', 'W11 to W15']);
    expect(found.short).toEqual([
      { mark: 'W6 to W10', has: 4, waits: false },
      { mark: 'W16 to W17', has: 2, waits: true },
    ]);
  });

  it('names a group an event falls into, and leaves it out of the limits', () => {
    const sizes = [...wander(5, 1), ...wander(5, 1, 3), ...wander(5, 1, 9), ...wander(5, 1, 12)];
    const found = chart({
      sizes,
      run: run('mean and range'),
      events: [
        { kind: 'insert changed', afterOrdinal: 8 },
        { kind: 'break', afterOrdinal: 10 },
      ],
    });
    expect(found.straddling.map(({ mark, straddles }) => [mark, straddles])).toEqual([
      ['W6 to W10', ['insert changed']],
    ]);
    expect(found.base.count).toBe(3);
  });

  it('takes the readings of one piece as a group where that is chosen', () => {
    const found = chart({
      sizes: vane,
      run: { ...run('mean and range'), groupOf: 'readings' },
    });
    expect(found.main[0]!.centreMm * um).toBeCloseTo(33.32, 9);
    expect(found.main.map(({ mark }) => mark).slice(0, 2)).toEqual(['W1', 'W2']);
    expect(marks(found, 'beyond three sigma')).toEqual(['W6', 'W8', 'W11', 'W19']);
  });

  it('pools s where pieces were read more or less often, and judges each by its own number', () => {
    // Montgomery, SQC, table 6.4, first 22 subgroups; limits as in the reference set.
    const set = subgroups.cases.find(({ id }) => id === 'sub-variable-size') as unknown as {
      inputs: { subgroups: number[][] };
      expected: Record<string, unknown>;
    };
    const groups = set.inputs.subgroups;
    const found = chart({
      sizes: groups.map((group) => group.map((value) => (value - 74) * um)),
      run: { control: 'mean and s', together: 5, groupOf: 'readings' },
    });
    expect(found.main).toHaveLength(groups.length);
    const flat = groups.flat();
    const grand = flat.reduce((sum, value) => sum + value, 0) / flat.length;
    expect(found.main[0]!.centreMm + 74).toBeCloseTo(grand, 9);
    const [five, three] = [found.main[0]!, found.main[1]!];
    expect(three.upperMm - three.centreMm).toBeGreaterThan(five.upperMm - five.centreMm);
  });
});

describe('weighted averages and sums', () => {
  const caseOf = (id: string) =>
    sums.cases.find((one) => one.id === id) as unknown as {
      inputs: { x: number[] };
      expected: Record<string, number[]>;
    };

  const singlesOf = (values: readonly number[]) =>
    values.map((value, i): ControlGroup => ({
      from: i + 1,
      to: i + 1,
      mark: `W${i + 1}`,
      values: [value],
      lineMm: 0,
      stretch: 0,
      inBase: true,
      straddles: [],
    }));
  const plainLimits = {
    centreMm: 10,
    sigmaMm: 1,
    main: () => ({ low: 7, high: 13 }),
    sigmaOf: () => 1,
    spread: null,
  };

  it('are those of Montgomery table 9.2, with its signal, its beginning and its size', () => {
    // SQC, tables 9.1 and 9.2: mean 10, sigma 1, k 0.5, h 5; out at 29 with C+ 5.28 and N+ 7, so the
    // change began at 23 and the mean is 10 + 0.5 + 5.28/7 = 11.25.
    const { inputs, expected } = caseOf('cusum-montgomery-9-1');
    const groups = singlesOf(inputs.x);
    const limits = plainLimits;
    const tracks = controlTracks('cusum', groups, limits, usualChartSettings);
    tracks.main.forEach(({ valueMm }, i) => expect(valueMm).toBeCloseTo(expected['s_hi']![i]!, 9));
    tracks.low!.forEach(({ valueMm }, i) => expect(-valueMm).toBeCloseTo(expected['s_lo']![i]!, 9));
    const [signal, ...more] = controlSignals(
      { control: 'cusum', patterns: [] },
      groups,
      limits,
      tracks,
    );
    expect(more).toEqual([]);
    expect(signal).toMatchObject({ mark: 'W29', side: 'above', change: { beganMark: 'W23' } });
    expect(signal!.change!.meanMm).toBeCloseTo(11.25, 2);
  });

  it('keep to the reference value and the decision interval they are set to', () => {
    // The same sums of Montgomery 9.1, k 0.5 and h 5, said in another sigma: a quarter of 2, and 2.5 of it.
    const { inputs, expected } = caseOf('cusum-montgomery-9-1');
    const limits = { ...plainLimits, sigmaMm: 2, sigmaOf: () => 2 };
    const settings = { ...usualChartSettings, sumReferenceMilli: 250, sumDecisionMilli: 2500 };
    const tracks = controlTracks('cusum', singlesOf(inputs.x), limits, settings);
    tracks.main.forEach(({ valueMm }, i) => expect(valueMm).toBeCloseTo(expected['s_hi']![i]!, 9));
    expect(tracks.main[0]!.upperMm).toBeCloseTo(5, 12);
    // Of twice the reference value a sum is smaller, and of a wider interval there is no signal.
    const other = { ...usualChartSettings, sumReferenceMilli: 1000, sumDecisionMilli: 20_000 };
    const wide = controlTracks('cusum', singlesOf(inputs.x), plainLimits, other);
    expect(wide.main[28]!.valueMm).toBeLessThan(expected['s_hi']![28]!);
    expect(wide.sums[0]!.chart.signal).toBeUndefined();
  });

  it('weigh the newest as they are set to: the averages and limits of the e-Handbook', () => {
    // 6.3.2.4: lambda 0.3, L 3, centre 50, sigma 2.0539; the limits from the start as in the reference set.
    const { inputs, expected } = caseOf('ewma-ehb');
    const start = caseOf('ewma-ehb-exact-limits').expected;
    const limits = { ...plainLimits, centreMm: 50, sigmaMm: 2.0539, sigmaOf: () => 2.0539 };
    const at = (averageWeightMilli: number, averageWidthMilli: number) =>
      controlTracks('ewma', singlesOf(inputs.x), limits, {
        ...usualChartSettings,
        averageWeightMilli,
        averageWidthMilli,
      }).main;
    at(300, 3000).forEach(({ valueMm, lowerMm, upperMm }, i) => {
      expect(valueMm).toBeCloseTo(expected['ewma']![i]!, 9);
      expect(upperMm).toBeCloseTo(start['ucl']![i]!, 9);
      expect(lowerMm).toBeCloseTo(start['lcl']![i]!, 9);
    });
    const [narrow, wide] = [at(300, 1500)[19]!, at(300, 3000)[19]!];
    expect(narrow.upperMm - 50).toBeCloseTo((wide.upperMm - 50) / 2, 12);
  });

  it('are kept with the run, and charted as it says', () => {
    const { x } = caseOf('ewma-ehb').inputs;
    const found = chart({ sizes: x, run: { control: 'ewma', averageWeightMilli: 300 } });
    expect(found.main[0]!.valueMm * um).toBeCloseTo(0.3 * 52 + 0.7 * found.limits.centreMm * um, 9);
  });

  it('find the shift of the e-Handbook from limits of the pieces before it', () => {
    // e-Handbook 6.3.2.3: twelve values near 325, then eight near 327.7. Its own wide K and H signal at 14;
    // those of the first twelve (mean 324.79, slack about 0.2) at 13, and the twelfth, 325.15, is already
    // above mean and slack, so the change is thought to have begun there.
    const { inputs } = caseOf('cusum-ehb');
    const found = chart({ sizes: inputs.x, run: { control: 'cusum', baseFrom: 1, baseTo: 12 } });
    expect(found.main[0]!.upperMm).toBeCloseTo(5 * found.limits.sigmaMm, 12);
    expect(found.signals).toMatchObject([
      { mark: 'W13', side: 'above', change: { beganMark: 'W12' } },
    ]);
    expect(found.low!.every(({ valueMm }) => valueMm <= 0)).toBe(true);
  });

  it('draw the averages of the e-Handbook between limits that widen from the start', () => {
    const found = chart({ sizes: caseOf('ewma-ehb').inputs.x, run: { control: 'ewma' } });
    const [first, last] = [found.main[0]!, found.main.at(-1)!];
    expect(last.upperMm - last.lowerMm).toBeGreaterThan(first.upperMm - first.lowerMm);
    expect(first.valueMm * um).toBeCloseTo(0.2 * 52 + 0.8 * found.limits.centreMm * um, 9);
  });

  it('begin anew after an offset', () => {
    const sizes = [...wander(10, 1), ...wander(10, 1)];
    const found = chart({
      sizes,
      run: { control: 'cusum' },
      events: [{ kind: 'offset moved', afterOrdinal: 10 }],
    });
    expect(found.main[10]!.valueMm).toBeCloseTo(found.main[0]!.valueMm, 12);
    expect(found.sums.map(({ first }) => first)).toEqual([0, 10]);
  });
});

describe('limits that follow the line', () => {
  const growing = wander(24, 0.5).map((off, i) => -24 + 0.9 * i + off);

  it('tell no drift as a signal, where flat ones tell nothing else', () => {
    const run = { ...singles, patterns: ['beyond three sigma', 'nine on one side'] as const };
    const flat = chart({ sizes: growing, run: { ...run, patterns: [...run.patterns] } });
    const line = chart({
      sizes: growing,
      run: { ...run, patterns: [...run.patterns], follow: 'line' },
    });
    expect(flat.signals.length).toBeGreaterThan(5);
    expect(line.signals).toEqual([]);
    expect(line.main[23]!.centreMm - line.main[0]!.centreMm).toBeCloseTo(23 * 0.0009, 3);
    const width = ({ upperMm, lowerMm }: { upperMm: number; lowerMm: number }) => upperMm - lowerMm;
    expect(width(line.main[23]!)).toBeCloseTo(width(line.main[0]!), 12);
  });

  it('follow each stretch, and leave one too short for a line without limits', () => {
    const found = chart({
      sizes: [...growing.slice(0, 10), ...growing.slice(0, 10), -20, -19],
      run: { ...singles, follow: 'line' },
      events: [
        { kind: 'offset moved', afterOrdinal: 10 },
        { kind: 'insert changed', afterOrdinal: 20 },
      ],
    });
    expect(found.main.map(({ ordinal }) => ordinal)).toEqual(
      Array.from({ length: 20 }, (_, i) => i + 1),
    );
    expect(found.main[10]!.centreMm).toBeLessThan(found.main[9]!.centreMm);
  });
});

describe('no control chart', () => {
  it.each<[string, SmallRun, string]>([
    ['four pieces', { sizes: [1, 2, 1, 3], run: singles }, 'few pieces'],
    [
      'means of one at a time',
      { sizes: wander(9, 1), run: { control: 'mean and s' } },
      'no groups',
    ],
    [
      'a stretch of three pieces',
      { sizes: wander(9, 1), run: { ...singles, baseFrom: 2, baseTo: 4 } },
      'short stretch',
    ],
    [
      'a single whole group',
      { sizes: wander(7, 1), run: { control: 'mean and range', together: 4 } },
      'short stretch',
    ],
    ['pieces that are all alike', { sizes: [5, 5, 5, 5, 5, 5], run: singles }, 'no scatter'],
    [
      'a line through stretches of four',
      {
        sizes: wander(8, 1),
        run: { ...singles, follow: 'line' },
        events: [{ kind: 're-chucked', afterOrdinal: 4 }],
      },
      'no line',
    ],
  ])('of %s', (_, small, reason) => {
    expect(of(small)).toMatchObject({ kind: 'too little', reason });
  });

  it('where none is wanted', () => {
    expect(of({ sizes: wander(9, 1) })).toEqual({ kind: 'none' });
  });
});

describe('limits that follow the line, over an event', () => {
  const growing = (count: number) => wander(count, 0.5).map((off, i) => -14 + 0.4 * i + off);
  const run = { control: 'single pieces', follow: 'line', baseFrom: 1, baseTo: 12 } as const;
  const events = [{ kind: 'insert changed', afterOrdinal: 12 }] as const;

  it('name the pieces of a stretch that is too short for one', () => {
    const found = chart({ sizes: [...growing(12), ...growing(3)], run, events, of: 30 });
    expect(found.main).toHaveLength(12);
    expect(found.lineless).toEqual([{ first: 'W13', last: 'W15', count: 3 }]);
  });

  it('are drawn about the own line of a later stretch once it has five', () => {
    const found = chart({ sizes: [...growing(12), ...growing(6)], run, events, of: 30 });
    expect(found.main).toHaveLength(18);
    expect(found.lineless).toEqual([]);
    expect(found.base).toMatchObject({ from: 1, to: 12, count: 12 });
  });
});

describe('every choice of chart', () => {
  const kinds = ControlKind.options.filter((kind) => kind !== 'none');
  const choices = kinds.flatMap((control) =>
    [1, 5].flatMap((together) =>
      (['pieces', 'readings'] as const).flatMap((groupOf) =>
        (['flat', 'line'] as const).map((follow) => ({ control, together, groupOf, follow })),
      ),
    ),
  );

  it.each(choices)('draws a chart or says why not: %o', (run) => {
    const found = of({ sizes: wander(20, 3), run });
    if (found.kind === 'too little') {
      expect(['no groups', run.follow === 'line' ? 'no line' : 'short stretch']).toContain(
        found.reason,
      );
      return;
    }
    expect(found.kind).toBe('chart');
    if (run.control !== 'single pieces') return;
    expect(found).toMatchObject({ grouped: false, base: { count: 20 } });
    expect((found as ControlChart).spread).toHaveLength(19);
  });
});
