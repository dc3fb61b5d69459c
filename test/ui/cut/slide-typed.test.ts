import { describe, expect, it } from 'vitest';
import { slideKept, slideTyped } from '@/app/ui/cut/slide-typed';
import { typedSlide } from '@/lib/rules/cuts/typed-slide';

const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const slide = {
  dial: 'radius',
  divisionPm: 25_400_000,
  fineFeed: 5.74,
  bitesPm: 17_699_652,
} as const;
const said = { slide, lapPm: 6.35 * um, dialAtPm: 134 * 25_400_000 };

describe('the set-up of a slide as it is filled in again', () => {
  it('has an inch dial in inches in a metric job, every digit of its ratio, and the lap whole', () => {
    expect(slideTyped(said, mm)).toEqual({
      dial: 'radius',
      division: '0.001',
      fineFeed: '5.74',
      bites: '0.002',
      lap: '0.00635',
      dialAt: '0.134',
      tool: '',
    });
    expect(
      slideTyped({ ...said, slide: { ...slide, unit: 'mm' } }, { ...mm, decimal: ',' }),
    ).toMatchObject({ division: '0,0254', fineFeed: '5,74' });
  });

  it('is kept as it was when nothing is changed', () => {
    const read = typedSlide(slideTyped(said, mm), { ...mm, dialUnit: 'in' }, slideKept(said, mm));
    expect(read).toEqual({ kind: 'slide', ...said, slide: { ...slide, unit: 'in' } });
  });

  it('keeps the name of its machine', () => {
    const named = { ...said, slide: { ...slide, tool: 'Big lathe' } };
    expect(slideTyped(named, mm).tool).toBe('Big lathe');
  });

  it('is empty where nobody has said one', () => {
    const none = { slide: null, lapPm: 0, dialAtPm: null };
    expect(slideTyped(none, mm)).toEqual({
      dial: 'radius', division: '', fineFeed: '', bites: '', lap: '', dialAt: '', tool: '',
    }); // prettier-ignore
    expect(slideKept(none, mm)).toBeNull();
  });
});
