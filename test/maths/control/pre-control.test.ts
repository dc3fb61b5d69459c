import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oneSidedLine } from '@/lib/maths/control/one-sided-line';
import { oneSidedZone } from '@/lib/maths/control/one-sided-zone';
import { preControlChances } from '@/lib/maths/control/pre-control-chances';
import { preControlLines } from '@/lib/maths/control/pre-control-lines';
import { preControlSample } from '@/lib/maths/control/pre-control-sample';
import { preControlSetUp } from '@/lib/maths/control/pre-control-set-up';
import { preControlZone, type LimitsPm } from '@/lib/maths/control/pre-control-zone';
import { samplingGap } from '@/lib/maths/control/sampling-gap';
import { expectNear } from './near';

// The rules are Satterthwaite's (1954) and Shainin's: zones at the quarter points, five greens to start,
// two pieces a sample. A tolerance of 40 pm makes the arithmetic one for the head.
const forty: LimitsPm = { lowerPm: 0, upperPm: 40 };
const limits = fc
  .tuple(fc.integer({ min: -1e12, max: 1e12 }), fc.integer({ min: 1, max: 1e9 }))
  .map(([lowerPm, width]) => ({ lowerPm, upperPm: lowerPm + width }));

describe('preControlZone', () => {
  it('is green in the middle half, yellow in the outer quarters and red outside', () => {
    const zones = [-1, 0, 9, 10, 20, 30, 31, 40, 41].map((size) => preControlZone(forty, size));
    expect(zones).toEqual([
      'red low',
      'yellow low',
      'yellow low',
      'green',
      'green',
      'green',
      'yellow high',
      'yellow high',
      'red high',
    ]);
  });

  it('is exact on a line that falls between whole picometres', () => {
    // Quarter of 42 is 10.5: 10 is below it, 11 above; the upper line is 31.5.
    const zones = [10, 11, 31, 32].map((size) => preControlZone({ lowerPm: 0, upperPm: 42 }, size));
    expect(zones).toEqual(['yellow low', 'green', 'green', 'yellow high']);
  });

  it('turns high into low when everything is mirrored', () => {
    const mirrored = { high: 'low', low: 'high' } as const;
    fc.assert(
      fc.property(limits, fc.double({ min: -0.5, max: 1.5, noNaN: true }), (drawn, share) => {
        const size = drawn.lowerPm + Math.round(share * (drawn.upperPm - drawn.lowerPm));
        const turned = { lowerPm: -drawn.upperPm, upperPm: -drawn.lowerPm };
        const zone = preControlZone(drawn, size);
        const wanted = zone.replace(/\b(?:high|low)$/, (side) => mirrored[side as 'high' | 'low']);
        expect(preControlZone(turned, -size)).toBe(wanted);
      }),
    );
  });

  it.each([
    [
      'limits the wrong way round',
      { lowerPm: 2, upperPm: 1 },
      1,
      'below the upper, got 2 and 1 pm',
    ],
    ['limits that are the same', { lowerPm: 1, upperPm: 1 }, 1, 'below the upper, got 1 and 1 pm'],
    ['half a picometre', forty, 0.5, 'size in whole picometres, got 0.5'],
    ['a limit of half a picometre', { lowerPm: 0.5, upperPm: 2 }, 1, 'limits in whole picometres'],
    ['a size beyond two kilometres', forty, 3e15, 'size in whole picometres, got 3000000000000000'],
  ])('refuses %s', (_, drawn, size, message) => {
    expect(() => preControlZone(drawn, size)).toThrow(message);
  });
});

describe('preControlLines', () => {
  it('gives both limits and the quarter points between them', () => {
    expect(preControlLines(forty)).toEqual([0, 10, 30, 40]);
    expect(preControlLines({ lowerPm: 1, upperPm: 3 })).toEqual([1, 1.5, 2.5, 3]);
  });

  it('refuses limits that do not enclose anything', () => {
    expect(() => preControlLines({ lowerPm: 3, upperPm: 3 })).toThrow('got 3 and 3 pm');
  });
});

describe('preControlSetUp', () => {
  it('lets the batch run at the fifth green in a row', () => {
    const { steps, approvedAt } = preControlSetUp(forty, [20, 20, 20, 20, 20]);
    expect(approvedAt).toBe(4);
    expect(steps.map(({ greens }) => greens)).toEqual([1, 2, 3, 4, 5]);
  });

  it('starts the count again after one yellow', () => {
    const { steps, approvedAt } = preControlSetUp(forty, [20, 20, 35, 20, 20, 20, 20, 20]);
    expect(steps[2]).toEqual({ zone: 'yellow high', greens: 0, action: 'start again' });
    expect(approvedAt).toBe(7);
  });

  it('asks for an adjustment at the second yellow in a row, and then counts yellows afresh', () => {
    const { steps } = preControlSetUp(forty, [5, 35, 5, 5]);
    expect(steps.map(({ action }) => action)).toEqual([
      'start again',
      'adjust',
      'start again',
      'adjust',
    ]);
  });

  it('does not join yellows with a green between them', () => {
    const { steps } = preControlSetUp(forty, [5, 20, 5]);
    expect(steps.map(({ action }) => action)).toEqual(['start again', 'count', 'start again']);
  });

  it('asks for an adjustment at a red, after which one yellow only starts the count again', () => {
    const { steps, approvedAt } = preControlSetUp(forty, [20, 41, 5]);
    expect(steps.map(({ action }) => action)).toEqual(['count', 'adjust', 'start again']);
    expect(approvedAt).toBeUndefined();
  });

  it('judges nothing after the approving piece', () => {
    expect(preControlSetUp(forty, [20, 20, 20, 20, 20, 99]).steps).toHaveLength(5);
  });
});

describe('preControlSample', () => {
  it('goes on at a green first piece without looking at the second', () => {
    expect(preControlSample(forty, 20, 99)).toEqual({ decision: 'go on', read: 1 });
    expect(preControlSample(forty, 20)).toEqual({ decision: 'go on', read: 1 });
  });

  it('asks for the second piece when the first is yellow', () => {
    expect(preControlSample(forty, 35)).toEqual({ decision: 'measure the second', read: 1 });
  });

  it('goes on when the second is green', () => {
    expect(preControlSample(forty, 35, 20)).toEqual({ decision: 'go on', read: 2 });
  });

  it('moves the mean to the middle when both are yellow on one side', () => {
    // By hand: middle 20, mean of 32 and 34 is 33, so -13; the other way round +13.
    const reset = { decision: 'reset the mean', read: 2 };
    expect(preControlSample(forty, 32, 34)).toEqual({ ...reset, shiftPm: -13 });
    expect(preControlSample(forty, 8, 6)).toEqual({ ...reset, shiftPm: 13 });
  });

  it('does not move the mean when the yellows are on both sides', () => {
    expect(preControlSample(forty, 35, 5)).toEqual({ decision: 'spread too large', read: 2 });
  });

  it('stops at a red, first or second', () => {
    expect(preControlSample(forty, 41, 20)).toEqual({ decision: 'outside the limits', read: 1 });
    expect(preControlSample(forty, -1, 20)).toEqual({ decision: 'outside the limits', read: 1 });
    expect(preControlSample(forty, 35, 41)).toEqual({ decision: 'outside the limits', read: 2 });
    expect(preControlSample(forty, 35, -1)).toEqual({ decision: 'outside the limits', read: 2 });
  });
});

describe('samplingGap', () => {
  it('is a sixth of the mean gap between stops, rounded down', () => {
    // By hand: gaps 48 and 42, mean 45; 45 / 6 = 7.5.
    expect(samplingGap([40, 88, 130])).toEqual({ meanGap: 45, samplePieces: 7 });
  });

  it('is never less than every piece', () => {
    expect(samplingGap([10, 13]).samplePieces).toBe(1);
  });

  it.each([
    ['one stop', [40], 'at least 2 stops, got 1'],
    ['stops out of order', [40, 30], 'whole increasing stops, got 30 at index 1'],
    ['the same stop twice', [40, 40], 'whole increasing stops, got 40 at index 1'],
    ['half a piece', [1, 2.5], 'whole increasing stops, got 2.5 at index 1'],
  ])('refuses %s', (_, stops, message) => {
    expect(() => samplingGap(stops)).toThrow(message);
  });
});

describe('preControlChances', () => {
  it('gives the well-known chances of a centred process that just fits', () => {
    // PHI(1.5) and PHI(3) of any normal table: 0.933193 and 0.998650.
    const chances = preControlChances(1, 0);
    expectNear(chances.green, 2 * 0.933193 - 1, 2e-6);
    expectNear(chances.yellowLow, 0.99865 - 0.933193, 1e-6);
    expectNear(chances.red, 2 * (1 - 0.99865), 1e-6);
    expectNear(chances.setUpPasses, (2 * 0.933193 - 1) ** 5, 1e-5);
    expectNear(chances.sampleStops, 0.0202, 5e-5); // Shainin: about 2 % (from memory)
  });

  it('stops a sample just as often as the rules do', () => {
    // Every pair of zones through preControlSample itself, weighed by its chances.
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (cp, off) => {
          const { green, yellowLow, yellowHigh, red, sampleStops } = preControlChances(cp, off);
          const zones = [
            [20, green],
            [5, yellowLow],
            [35, yellowHigh],
            [41, red],
          ] as const;
          let stops = 0;
          for (const [first, chance] of zones) {
            for (const [second, next] of zones) {
              const { decision } = preControlSample(forty, first, second);
              if (decision !== 'go on') stops += chance * next;
            }
          }
          expectNear(sampleStops, stops, 1e-12);
          expectNear(green + yellowLow + yellowHigh + red, 1, 1e-12);
        },
      ),
    );
  });

  it('shifts the yellows to the side the mean is on', () => {
    const { yellowHigh, yellowLow } = preControlChances(1, 1);
    expect(yellowHigh).toBeGreaterThan(yellowLow);
    expect(preControlChances(1, -1).yellowLow).toBeCloseTo(yellowHigh, 12);
  });

  it('refuses a Cp of 0 and a mean that is nowhere', () => {
    expect(() => preControlChances(0, 0)).toThrow('Cp above zero, got 0');
    expect(() => preControlChances(1, NaN)).toThrow('a finite distance off centre, got NaN');
  });
});

describe('oneSidedZone', () => {
  it('changes half way to the limit, above or below the best size', () => {
    const runOut = [0, 10, 11, 20, 21].map((size) =>
      oneSidedZone({ bestPm: 0, limitPm: 20 }, size),
    );
    expect(runOut).toEqual(['green', 'green', 'yellow', 'yellow', 'red']);
    const depth = [100, 90, 89, 80, 79].map((size) =>
      oneSidedZone({ bestPm: 100, limitPm: 80 }, size),
    );
    expect(depth).toEqual(['green', 'green', 'yellow', 'yellow', 'red']);
  });

  it('is green on the other side of the best size', () => {
    expect(oneSidedZone({ bestPm: 0, limitPm: 20 }, -500)).toBe('green');
  });

  it('refuses a limit at the best size, and half picometres', () => {
    expect(() => oneSidedZone({ bestPm: 3, limitPm: 3 }, 3)).toThrow('got 3 for both');
    expect(() => oneSidedZone({ bestPm: 0, limitPm: 20 }, 0.5)).toThrow('got 0.5');
    expect(() => oneSidedZone({ bestPm: 0, limitPm: 20 }, 3e15)).toThrow('got 3000000000000000');
  });
});

describe('oneSidedLine', () => {
  it('is half way from the best size to the limit', () => {
    expect(oneSidedLine({ bestPm: 0, limitPm: 21 })).toBe(10.5);
    expect(oneSidedLine({ bestPm: 100, limitPm: 80 })).toBe(90);
  });

  it('refuses a limit at the best size', () => {
    expect(() => oneSidedLine({ bestPm: 3, limitPm: 3 })).toThrow('got 3 and 3 pm');
  });
});
