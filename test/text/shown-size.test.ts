import { describe, expect, it } from 'vitest';
import { shownLength, shownSize } from '@/lib/text/shown-size';

const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: ',' } as const;
const um = 1_000_000;
const size = (valuePm: number, expandedPm: number) => ({ valuePm, expandedPm });

describe('shownSize', () => {
  it('shows the place the doubt allows (JCGM 100, 7.2.6)', () => {
    expect(shownSize(size(17_998_750_000, 24 * um), um, mm)).toMatchObject({
      value: '18.00',
      plusMinus: '0.03',
    });
  });

  it('shows no digit the gauge does not have, however well it is known', () => {
    expect(shownSize(size(17_998_750_000, 400_000), um, mm)).toMatchObject({
      value: '17.999',
      plusMinus: '0.001',
    });
  });

  it('rounds the doubt up, but not where that would add more than it loses', () => {
    expect(shownSize(size(0, 1_040_000), um, mm).plusMinus).toBe('0.001');
    expect(shownSize(size(0, 1_300_000), um, mm).plusMinus).toBe('0.002');
  });

  it('shows the same size in inches with the comma of the person', () => {
    expect(shownSize(size(25_000_000_000, 2_540_000), 1_270_000, inch)).toMatchObject({
      value: '0,9843',
      plusMinus: '0,0001',
    });
  });
});

describe('shownLength', () => {
  it('shows a departure with its sign', () => {
    expect(shownLength(16 * um, um, mm, 'always')).toBe('+0.016');
    expect(shownLength(-16 * um, um, mm)).toBe('\u22120.016');
  });
});
