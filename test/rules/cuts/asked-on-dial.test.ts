import { describe, expect, it } from 'vitest';
import { askedOnDial } from '@/lib/rules/cuts/asked-on-dial';
import { lastSlide } from '@/lib/rules/cuts/last-slide';
import type { Cut } from '@/lib/schema/fit';
import { um } from '../make';
import { aCut } from './a-cut';

const thou = 25_400_000; // 0.001 in, exactly

describe('askedOnDial', () => {
  it.each<[string, Partial<Cut>, 'mm' | 'in', ReturnType<typeof askedOnDial>]>([
    ['half of it, of a radius', { askedPm: 200 * um, dialUnit: 'mm' }, 'mm', { dialPm: 100 * um, unit: 'mm' }],
    ['all of it, of a diameter', { askedPm: 4 * thou, dial: 'diameter', divisionPm: thou, dialUnit: 'in' }, 'mm', { dialPm: 4 * thou, unit: 'in' }],
    ['ten times that, of a top slide set over', { askedPm: 20 * um, fineFeed: 10, dialUnit: 'mm' }, 'in', { dialPm: 100 * um, unit: 'mm' }],
    ['in the unit it says, whatever the division', { askedPm: 2 * thou, divisionPm: thou, dialUnit: 'mm' }, 'in', { dialPm: thou, unit: 'mm' }],
    ['in that of its division, where it says none', { askedPm: 2 * thou, divisionPm: thou }, 'mm', { dialPm: thou, unit: 'in' }],
    ['in that of its division, from an older book', { askedPm: 20 * um, dialUnit: null }, 'in', { dialPm: 10 * um, unit: 'mm' }],
    ['nothing, of a slide that is not said', { dial: null }, 'mm', null],
    ['nothing, of a division that is not said', { divisionPm: null }, 'mm', null],
    ['nothing, of a spring pass', { spring: true }, 'mm', null],
    ['nothing, where nobody said', { askedPm: 0 }, 'mm', null],
  ])('is %s', (_, over, job, wanted) => {
    expect(askedOnDial(aCut(1, over), job)).toEqual(wanted);
  }); // prettier-ignore
});

describe('lastSlide', () => {
  it('is that of the last cut that says its slide, with the unit of its dial', () => {
    const at = (hour: string, over: Partial<Cut>) =>
      aCut(1, { createdAt: `2026-03-14T${hour}:00:00Z`, ...over });
    const inch = at('11', { divisionPm: thou, dialUnit: 'in', fineFeed: 10 });
    const later = at('12', { dial: null });
    expect(lastSlide([at('10', {}), inch, later])).toEqual({
      dial: 'radius',
      divisionPm: thou,
      fineFeed: 10,
      bitesPm: 0,
      unit: 'in',
    });
    expect(lastSlide([at('10', { fineFeed: null })])).toEqual({
      dial: 'radius',
      divisionPm: 10 * um,
      fineFeed: 1,
      bitesPm: 0,
    });
    expect(lastSlide([at('10', { tool: 'Big lathe' })])).toMatchObject({ tool: 'Big lathe' });
    expect(lastSlide([later])).toBeNull();
  });
});
