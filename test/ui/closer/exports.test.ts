import { describe, expect, it } from 'vitest';
import { seriesCsv } from '@/app/ui/closer/series-csv';
import { seriesSvg } from '@/app/ui/closer/series-svg';
import { closerChartData, type CloserFacts } from '@/app/ui/charts/closer-chart-data';
import { wholeWindow } from '@/app/ui/charts/window';
import { closerWords } from '@/lib/text/closer-words';
import { runTitle } from '@/lib/text/run-title';

const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const facts: CloserFacts = {
  ordinals: [1, 3],
  sizesPm: [18_004 * um + 500_000, 17_999 * um],
  nominalPm: 18_000 * um,
  lowerPm: 18_000 * um,
  upperPm: null,
  events: [],
  last: 4,
  marks: null,
};

describe('seriesCsv', () => {
  it('has a row for each measured piece, in the unit shown, with a point (RFC 4180)', () => {
    expect(seriesCsv(facts, 'L', 'mm')).toBe(
      'piece,mark,size mm,lower limit mm,upper limit mm\r\n1,L1,18.004500,18.000000,\r\n3,L3,17.999000,18.000000,\r\n',
    );
    expect(seriesCsv(facts, 'L', 'in')).toContain('1,L1,0.7088386,0.7086614,\r\n');
  });

  it('quotes a mark that would break a row, and takes the sting out of one that reads as a formula', () => {
    expect(seriesCsv(facts, 'a"b,', 'mm')).toContain('"a""b,1"');
    expect(seriesCsv(facts, '=', 'mm')).toContain("'=1");
  });
});

describe('seriesSvg', () => {
  const data = closerChartData(facts, wholeWindow(4), 100, mm);

  it('draws each piece where it stands, and one outside in its own shape', () => {
    const svg = seriesSvg(data, 'L1 to L4 <of 4>');
    expect(svg).toContain('<title>L1 to L4 &lt;of 4&gt;</title>');
    expect(svg.match(/<circle /g)).toHaveLength(1);
    // L1 stands an eighth along the plot: 70 + 1000 / 8.
    expect(svg).toContain('<circle cx="195"');
    expect(svg.match(/fill="#fff" stroke="#000"/g)).toHaveLength(1);
    expect(svg).toContain('Lower 18.000');
    expect(svg).not.toMatch(/NaN|undefined/);
  });
});

describe('closerWords', () => {
  const seen = {
    count: 2,
    least: { ordinal: 3, sizePm: 17_999 * um },
    most: { ordinal: 1, sizePm: 18_004 * um },
  };
  const of = { prefix: 'L', from: 1, to: 4, last: 4, lowerPm: 18_000 * um, upperPm: 18_018 * um };

  it('says what is seen, and its extremes', () => {
    expect(closerWords({ ...of, seen }, mm)).toBe(
      'L1 to L4 of 4, 2 measured. Smallest 17.999 at L3, largest 18.004 at L1. Limits: no smaller than 18.000, no larger than 18.018.',
    );
    expect(closerWords({ ...of, upperPm: null, lowerPm: null, seen }, mm)).not.toContain('Limits');
  });

  it('says so where nothing was measured', () => {
    expect(closerWords({ ...of, seen: null }, mm)).toBe('L1 to L4 of 4. Nothing measured there.');
  });
});

describe('several features alike', () => {
  const alike: CloserFacts = {
    ...facts,
    ordinals: [1, 2, 5],
    sizesPm: [-4 * um, 5 * um, 0],
    nominalPm: 0,
    lowerPm: -3 * um,
    upperPm: 3 * um,
    marks: ['Q1 outside', 'Q1 seat', 'Q3 outside'],
    last: 8,
  };

  it('are drawn from their own nominals, with their limits as departures', () => {
    const data = closerChartData(alike, wholeWindow(8), 100, mm);
    expect(data.heightTitle).toBe('from own nominal, in 0.001 mm');
    expect(data.points.map(({ ordinal, height, outside }) => [ordinal, height, outside])).toEqual([
      [1, -4, true],
      [2, 5, true],
      [5, 0, false],
    ]);
    expect(data.upper).toEqual({ height: 3, label: '+0.003' });
    expect(data.lower).toEqual({ height: -3, label: '\u22120.003' });
  });

  it('are saved by their turns and their names', () => {
    const [head, first, second] = seriesCsv(alike, 'Q', 'mm').split('\r\n');
    expect(head).toBe('turn,mark,from nominal mm,lower limit mm,upper limit mm');
    expect(first).toBe('1,Q1 outside,-0.004000,-0.003000,0.003000');
    expect(second).toBe('2,Q1 seat,0.005000,-0.003000,0.003000');
  });

  it('are told as turns', () => {
    const words = closerWords(
      {
        prefix: 'Q',
        from: 1,
        to: 8,
        last: 8,
        seen: {
          count: 3,
          least: { ordinal: 1, sizePm: -4 * um, mark: 'Q1 outside' },
          most: { ordinal: 2, sizePm: 5 * um, mark: 'Q1 seat' },
        },
        lowerPm: -3 * um,
        upperPm: 3 * um,
        alike: true,
      },
      mm,
    );
    expect(words).toBe(
      'Turns 1 to 8 of 8, 3 measured. Smallest \u22120.004 at Q1 outside, largest +0.005 at Q1 seat. Limits: no smaller than \u22120.003, no larger than +0.003. Each from its own nominal.',
    );
    expect(runTitle('Pin', [{ name: 'Outside' }, { name: 'Seat' }])).toBe(
      'Pin, outside and one alike',
    );
    expect(runTitle('Pin', [{ name: 'Outside' }])).toBe('Pin, outside');
  });
});
