import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markLanes } from '@/app/ui/fit-rules/mark-lanes';

const area = { fromPx: 0, toPx: 1000, sizePx: 10 };
const at = (...xs: number[]) => xs.map((x) => ({ mark: '00', x }));

// '00' at 10 px is 13 px wide; marks stand 8 px apart.
describe('markLanes', () => {
  it('leaves marks that do not touch over their pieces', () => {
    const { lanes, marks } = markLanes(at(100, 121, 300), area);
    expect(lanes).toBe(1);
    expect(marks.map(({ x }) => x)).toEqual([100, 121, 300]);
  });

  it('moves touching marks apart by the same amount each way', () => {
    const { marks } = markLanes(at(100, 110), area);
    expect(marks.map(({ x }) => x)).toEqual([94.5, 115.5]);
    expect(marks[0]!.leader).toEqual([
      { x: 94.5, lane: 0 },
      { x: 100, lane: 'rule' },
    ]);
  });

  it('spreads equal pieces about their place', () => {
    expect(markLanes(at(100, 100, 100), area).marks.map(({ x }) => x)).toEqual([79, 100, 121]);
  });

  it('keeps marks inside the rule', () => {
    expect(markLanes(at(0, 2), area).marks.map(({ x }) => x)).toEqual([6.5, 27.5]);
    const [first, last] = markLanes(at(998, 1000), area).marks;
    expect([first!.x, last!.x]).toEqual([972.5, 993.5]);
  });

  it('has one lane to twelve pieces, and more before the marks would run out of room', () => {
    const spread = (count: number) => at(...Array.from({ length: count }, (_, i) => 30 + i * 30));
    expect(markLanes(spread(12), area).lanes).toBe(1);
    expect(markLanes(spread(13), area).lanes).toBe(2);
    expect(markLanes(spread(25), area).lanes).toBe(3);
    expect(markLanes(spread(9), { ...area, toPx: 120 }).lanes).toBeGreaterThan(1);
  });

  it('never lets marks of a lane touch, nor a leader run through a mark in front of it', () => {
    const pieces = fc.array(fc.integer({ min: 0, max: 600 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(pieces, (xs) => {
        const { marks } = markLanes(at(...xs), { ...area, toPx: 600 });
        for (const a of marks) {
          for (const b of marks) {
            if (a === b) continue;
            if (a.lane === b.lane)
              expect(Math.abs(a.x - b.x)).toBeGreaterThanOrEqual(13 + 8 - 1e-6);
            const passing = a.leader.find(({ lane }) => lane === b.lane);
            if (a.lane > b.lane) expect(Math.abs(passing!.x - b.x)).toBeGreaterThan(6.5);
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});
