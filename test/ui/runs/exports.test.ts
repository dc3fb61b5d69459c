import { describe, expect, it } from 'vitest';
import { controlChartData } from '@/app/ui/charts/control-chart-data';
import { controlDrawing } from '@/app/ui/charts/control-drawing';
import { runChartData } from '@/app/ui/charts/run-chart-data';
import { runDrawing } from '@/app/ui/charts/run-drawing';
import { controlCsv } from '@/app/ui/runs/control-csv';
import { runCsv } from '@/app/ui/runs/run-csv';
import { drawingSvg } from '@/app/ui/save/drawing-svg';
import { controlView, type ControlChart } from '@/lib/rules/control-view';
import { oddPieces } from '@/lib/rules/odd-pieces';
import { correctionOf } from '../../rules/make';
import { smallRun, wander, type SmallRun } from '../../rules/small-run';

const mm = { unit: 'mm', decimal: ',' } as const;
const lines = (csv: string) => csv.split('\r\n');
const control = (small: SmallRun) => {
  const run = smallRun(small);
  return { run, chart: controlView(run) as ControlChart };
};

/** Eight that grow, the third set aside with a reason. */
const drifting = smallRun({
  sizes: [-9, -7, 30, -4, -3, -1, 0, 2],
  feature: { lowerPm: -10_000_000, upperPm: 10_000_000 },
  of: 20,
  events: [{ kind: 'coolant', afterOrdinal: 2 }],
  corrections: (sheet) => [
    correctionOf(1, { readingId: sheet.readings[2]!.id, kind: 'void', reason: 'swarf, chips' }),
  ],
});

describe('a run chart as figures', () => {
  it('has a row for each turn, with its doubt and its limits, and says what was set aside', () => {
    const [head, first, second, third, ...more] = lines(runCsv(drifting, 'mm'));
    expect(head).toBe(
      'piece,mark,size mm,plus or minus mm,lower limit mm,upper limit mm,set aside',
    );
    expect(first).toMatch(/^1,W1,11\.991000,0\.00\d{4},11\.990000,12\.010000,$/);
    expect(second).toMatch(/^2,W2,11\.993000,/);
    expect(third).toBe('3,W3,12.030000,,11.990000,12.010000,"swarf, chips"');
    expect(more).toHaveLength(6);
    expect(more.at(-1)).toBe('');
  });

  it('is in the unit shown, and leaves a limit that there is not empty', () => {
    const open = smallRun({ sizes: [-9, 0], feature: { lowerPm: null, upperPm: 0 } });
    // By hand: 11.991 / 25.4 = 0.4720866 and 12 / 25.4 = 0.4724409.
    expect(lines(runCsv(open, 'in'))[1]).toMatch(/^1,W1,0\.4720866,0\.0000\d+,,0\.4724409,$/);
  });
});

describe('a run chart as a drawing', () => {
  const data = runChartData(drifting, mm, oddPieces(drifting).odd);
  const drawing = runDrawing(data);

  it('has each piece and no other, the line to its forecast, the band, the limits and the events', () => {
    const shapes = drawing.points.map(({ shape }) => shape);
    expect(shapes.filter((shape) => shape !== 'struck')).toHaveLength(7);
    expect(shapes.filter((shape) => shape === 'struck')).toHaveLength(1);
    const [line, forecast, low, high] = drawing.lines;
    expect(line!.at.at(-1)).toEqual(forecast!.at[0]);
    expect(forecast).toMatchObject({ dash: '9 6' });
    low!.at.forEach(({ height }, i) => expect(height).toBeLessThan(high!.at[i]!.height));
    expect(drawing.across.map(({ name, height }) => [name, height])).toEqual([
      ['Upper 12,010', 10],
      ['Aim 12,000', 0],
      ['Lower 11,990', -10],
    ]);
    expect(drawing.events[0]).toEqual({ ordinal: 2.5, title: 'Coolant' });
    expect(drawing.events[1]).toEqual({ ordinal: drifting.actAfter! + 0.5, title: 'Act here' });
    expect(drawing.bars).toHaveLength(7);
  });

  it('puts each where it stands, what lies beyond the scale at its edge, and draws no line beyond the plot', () => {
    const svg = drawingSvg([drawing], 'a < b');
    expect(svg).toContain('<title>a &lt; b</title>');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    // W1 of 0.4 to 21.6, a thousand wide from 70 on: 70 + 1000 * 0.6 / 21.2.
    expect(svg).toContain('<circle cx="98.3"');
    // 12.030 is twenty over the limit, above all else: it stands 8 under the top of the plot at 28.
    expect(svg).toMatch(/<circle cx="192\.64" cy="36" r="4"/);
    expect(svg.match(/fill="none"[^>]* clip-path="url\(#plot0\)"/g)).toHaveLength(
      drawing.lines.length,
    );
  });

  it('hatches the band of the drift as the screen does, cut off at the plot, and nothing without a drift', () => {
    const [, , low, high] = drawing.lines;
    expect(drawing.hatched).toEqual([...high!.at, ...low!.at.toReversed()]);
    const svg = drawingSvg([drawing], '');
    const drawn = [
      ...svg.matchAll(/<path d="([^"]*)Z" fill="url\(#hatch0\)" clip-path="url\(#plot0\)"/g),
    ];
    expect(drawn).toHaveLength(1);
    // There along the upper edge, back along the lower one: as many corners as both have.
    expect(drawn[0]![1]!.match(/[ML]/g)).toHaveLength(2 * low!.at.length);
    expect(svg.indexOf('url(#hatch0)')).toBeLessThan(svg.indexOf('<circle'));
    const few = runDrawing(runChartData(smallRun({ sizes: [-9, -8, -7] }), mm));
    expect(few.hatched).toBeNull();
    expect(drawingSvg([few], '')).not.toContain('hatch');
  });

  it('says at the edge of the plot what the drift meets beyond it', () => {
    const sizes = [-9, -7, -6, -4, -3, -1, 0, 2];
    const far = { lowerPm: -22_000_000, upperPm: 22_000_000 };
    const drawn = runDrawing(runChartData(smallRun({ sizes, feature: far, of: 12 }), mm));
    expect(drawn.words[0]!.ordinal).toBeGreaterThan(drawn.along.max);
    // Ten left of the right end of the plot, which is 1000 wide from 70 on.
    expect(drawingSvg([drawn], '')).toMatch(
      /<text x="1060" [^>]*text-anchor="end">meets the limit/,
    );
  });

  it('says where the drift meets its limit off the band: beyond that limit, on the plot', () => {
    const svgOf = (sizes: readonly number[], feature: object, of: number) => {
      const drawn = runDrawing(runChartData(smallRun({ sizes, feature, of }), mm));
      const said = /<text x="[\d.]+" y="([\d.]+)"[^>]*>meets/.exec(drawingSvg([drawn], ''));
      const { min, max } = drawn.up;
      // The scale goes so far beyond its outermost limit that the words are still on the plot.
      expect(Number(said![1])).toBeGreaterThan(28 + 10);
      expect(Number(said![1])).toBeLessThan(28 + 448);
      // The plot is 448 high from 28 on; a line of text stands 5 below its middle.
      const limit = 28 + ((max - drawn.words[0]!.height) / (max - min)) * 448;
      return Number(said![1]) - 5 - limit;
    };
    const sizes = [-9, -7, -6, -4, -3, -1, 0, 2];
    const near = { lowerPm: -10_000_000, upperPm: 10_000_000 };
    expect(svgOf(sizes, near, 24)).toBeCloseTo(-16, 1);
    expect(
      svgOf(
        sizes.map((um) => -um),
        near,
        24,
      ),
    ).toBeCloseTo(20, 1);
  });

  it('numbers the upright axis, nothing without a sign, and dashes what is dashed alone', () => {
    const svg = drawingSvg([drawing], '');
    const figures = [...svg.matchAll(/text-anchor="end">([+\u2212]?\d+)</g)].map(
      ([, text]) => text,
    );
    expect(figures).toEqual(['\u221210', '\u22125', '0', '+5', '+10', '+15', '+20', '+25']);
    const dashed = [...drawing.lines, ...drawing.across].filter(({ dash = '' }) => dash !== '');
    // And the uprights of both events.
    expect(svg.match(/stroke-dasharray="[\d ]+"/g)).toHaveLength(dashed.length + 2);
    expect(svg).not.toContain('stroke-dasharray=""');
  });

  it('rings a piece that is odd, and leaves those before an event that starts afresh hollow', () => {
    const sizes = [...wander(12, 1, -13), 25];
    const odd = smallRun({ sizes, events: [{ kind: 'insert changed', afterOrdinal: 2 }] });
    const drawn = runDrawing(runChartData(odd, mm, oddPieces(odd).odd));
    expect(drawn.points.map(({ shape }) => shape)).toEqual([
      'hollow',
      'hollow',
      ...Array.from({ length: 10 }, () => 'dot'),
      'ringed',
    ]);
    expect(drawingSvg([drawn], '').match(/<circle /g)).toHaveLength(14);
  });

  it('shows where the drift meets the limit, and by zones the quarter points', () => {
    const meets = smallRun({
      sizes: [-9, -7, -6, -4, -3, -1, 0, 2],
      feature: { lowerPm: -10_000_000, upperPm: 10_000_000 },
      run: { zones: true },
      of: 20,
    });
    const drawn = runDrawing(runChartData(meets, mm));
    expect(drawn.lines.at(-1)).toMatchObject({ width: 6 });
    expect(drawn.lines.at(-1)!.at.map(({ height }) => height)).toEqual([10, 10]);
    expect(drawn.across.slice(3).map(({ height }) => height)).toEqual([-5, 5]);
  });
});

describe('a control chart as figures', () => {
  it('has a row a point with its limits, the scatter beside it, and what is signalled there', () => {
    const sizes = wander(24, 1, -13).map((v, i) => (i === 20 ? v + 9 : v));
    const { run, chart } = control({ sizes, run: { control: 'single pieces' } });
    const [head, first, second, ...more] = lines(controlCsv(chart, run.nominalPm, 'mm'));
    expect(head).toBe(
      'turn,mark,single pieces mm,middle mm,lower limit mm,upper limit mm,moving ranges mm,middle mm,lower limit mm,upper limit mm,signal',
    );
    // 12 - 13 um + 0.34 um, and no range of a first piece; then |-0.98 - 0.34| = 1.32.
    expect(first).toMatch(/^1,W1,11\.987340,11\.98\d{4},11\.98\d{4},11\.99\d{4},,,,,$/);
    expect(second).toMatch(/^2,W2,11\.986020,.*,0\.001320,0\.00\d{4},0\.000000,0\.00\d{4},$/);
    expect(more[18]).toMatch(/^21,W21,.*,One beyond three sigma; Beyond its limit$/);
    expect(more).toHaveLength(23);
  });

  it('of sums has the upper and the lower, from nothing', () => {
    const { run, chart } = control({ sizes: wander(12, 2, -13), run: { control: 'cusum' } });
    const [head, first, ...more] = lines(controlCsv(chart, run.nominalPm, 'mm'));
    chart.low!.slice(1).forEach(({ valueMm }, i) => {
      expect(Number(more[i]!.split(',')[6])).toBeCloseTo(valueMm, 6);
    });
    expect(new Set(chart.low!.map(({ valueMm }) => valueMm)).size).toBeGreaterThan(3);
    expect(head).toBe(
      'turn,mark,upper sums mm,middle mm,lower limit mm,upper limit mm,lower sums mm,signal',
    );
    expect(first).toMatch(/^1,W1,0\.000\d{3},0\.000000,-0\.0\d{5},0\.0\d{5},-?0\.000\d{3},$/);
  });
});

describe('a control chart as a drawing', () => {
  it('stands with its scatter under it, limits only where they hold, signals in their own shape', () => {
    const sizes = wander(24, 1, -13).map((v, i) => (i === 20 ? v + 9 : v));
    const { run, chart } = control({ sizes, run: { control: 'single pieces' } });
    const { main, spread } = controlChartData(run, chart, mm);
    const drawing = controlDrawing(main);
    expect(drawing.points.filter(({ shape }) => shape === 'diamond')).toHaveLength(1);
    expect(drawing.points).toHaveLength(24);
    const upper = drawing.lines[1]!.at;
    expect([upper[0]!.ordinal, upper.at(-1)!.ordinal]).toEqual([0.5, 24.5]);
    expect(upper[0]!.height).toBeCloseTo(chart.main[0]!.upperMm * 1000, 9);
    expect(drawing.ends.map(({ name }) => name.split(' ')[0])).toEqual([
      'Upper',
      'Middle',
      'Lower',
    ]);
    const svg = drawingSvg([main, spread!].map(controlDrawing), 'Control chart');
    expect(svg).toContain('viewBox="0 0 1180 1080"');
    expect(svg.match(/<g transform="translate\(0 540\)">/g)).toHaveLength(1);
    expect(svg).toContain('moving ranges, in 0,001 mm');
    expect(svg).toContain('url(#plot1)');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });
});
