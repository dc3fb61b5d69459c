import { describe, expect, it } from 'vitest';
import { tieLabels } from '@/app/ui/fit-rules/tie-labels';

const area = { fromPx: 0, toPx: 400, sizePx: 16 };
const tie = (x1: number, x2 = x1, text = '10') => ({
  text,
  padPx: 0,
  line: { x1, y1: 0, x2, y2: 70 },
});

// '10' at 16 px is 20.8 px wide.
describe('tieLabels', () => {
  it('writes on the right of a tie at half height', () => {
    const [label] = tieLabels([tie(100)], area);
    expect(label!.box).toEqual({ x: 108, y: 27, width: 20.8, height: 16 });
  });

  it('writes on the left where another tie stands on the right', () => {
    const [first] = tieLabels([tie(100), tie(115)], area);
    expect(first!.box.x).toBeCloseTo(100 - 8 - 20.8, 9);
  });

  it('writes on the left at the end of the rule', () => {
    expect(tieLabels([tie(395)], area)[0]!.box.x).toBeLessThan(395);
  });

  it('stands clear of a leaning tie by as much as it leans', () => {
    const [label] = tieLabels([tie(100, 170)], area);
    expect(label!.box.x).toBeCloseTo(135 + 8 + 8, 9);
  });

  it('moves up or down before two figures touch', () => {
    const labels = tieLabels([tie(100), tie(135, 165)], area);
    const [a, b] = labels.map((label) => label!.box);
    const apart = a!.x + a!.width <= b!.x || b!.x + b!.width <= a!.x || a!.y !== b!.y;
    expect(apart).toBe(true);
  });

  it('leaves a figure out where there is no room for it', () => {
    const ties = [95, 100, 105].map((x) => tie(x));
    expect(tieLabels(ties, { ...area, fromPx: 90, toPx: 110 })).toEqual([null, null, null]);
  });

  it('keeps the room of a box about an unsure figure', () => {
    const [label] = tieLabels([{ ...tie(100), padPx: 4 }], area);
    expect(label!.box.width).toBeCloseTo(28.8, 9);
  });
});
