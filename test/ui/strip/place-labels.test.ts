import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels, type LabelWish } from '@/app/ui/strip/place-labels';

const lane = { widthPx: 300, sizePx: 10, gapPx: 12 };
const wish = (text: string | string[], from: number, to = from): LabelWish<string> => ({
  role: 'label',
  texts: [text].flat(),
  over: { from, to },
});

// A digit at 10 px is 6.5 px wide: '0000' is 26 px.
describe('placeLabels', () => {
  it('stands a label over the middle of its thing', () => {
    expect(placeLabels([wish('0000', 100, 140)], lane)).toEqual([
      { role: 'label', text: '0000', x: 120, stretch: { from: 107, to: 133 } },
    ]);
  });

  it('keeps a label inside the strip', () => {
    expect(placeLabels([wish('0000', 5)], lane)[0]!.stretch.from).toBe(0);
    expect(placeLabels([wish('0000', 298)], lane)[0]!.stretch.to).toBe(300);
  });

  it('moves a second label aside, no farther than it must', () => {
    const [, second] = placeLabels([wish('0000', 100), wish('0000', 110, 150)], lane);
    expect(second!.stretch.from).toBe(113 + 12);
  });

  it('takes a shorter wording before it goes', () => {
    const taken = [{ from: 150, to: 200 }];
    const wishes = [wish('0000', 100), wish(['00000000', '0'], 90, 130)];
    const placed = placeLabels(wishes, { ...lane, taken });
    expect(placed.map(({ text }) => text)).toEqual(['0000', '0']);
  });

  it('drops a label rather than stand it off its thing', () => {
    expect(placeLabels([wish('00000000', 100), wish('0000', 100)], lane)).toHaveLength(1);
  });

  it('keeps clear of what stands in the lane already', () => {
    const taken = [{ from: 95, to: 105 }];
    const [label] = placeLabels([wish('0000', 90, 130)], { ...lane, taken });
    expect(label!.stretch.from).toBe(117);
  });

  it('never lets two labels come closer than the gap, nor one leave the strip or its thing', () => {
    const wishes = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 80 }), fc.nat(12)),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(wishes, (list) => {
        const asked = list.map(([from, width, digits]) =>
          wish(['0'.repeat(digits + 2), '00'], from, Math.min(300, from + width)),
        );
        const placed = placeLabels(asked, lane).sort((a, b) => a.x - b.x);
        placed.forEach(({ stretch }, index) => {
          expect(stretch.from).toBeGreaterThanOrEqual(0);
          expect(stretch.to).toBeLessThanOrEqual(300);
          const next = placed[index + 1];
          if (next !== undefined) {
            expect(next.stretch.from - stretch.to).toBeGreaterThanOrEqual(lane.gapPx - 0.002);
          }
        });
      }),
    );
  });
});
