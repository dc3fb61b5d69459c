import { describe, expect, it } from 'vitest';
import { seriesCsv } from '@/app/ui/closer/series-csv';
import { seriesSvg } from '@/app/ui/closer/series-svg';
import { closerChartData, type CloserFacts } from '@/app/ui/charts/closer-chart-data';
import { wholeWindow } from '@/app/ui/charts/window';
import { closerOneWords, closerWords } from '@/lib/text/closer-words';

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

it('says why a run of several features has no closer look', () => {
  expect(closerOneWords).toBe(
    'This run charts several features together. The closer look is of one feature: start a run of it alone.',
  );
});
