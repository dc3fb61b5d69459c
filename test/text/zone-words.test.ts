import { describe, expect, it } from 'vitest';
import { zoneName, zoneSpreadWords, zoneWords, type ZoneWordFacts } from '@/lib/text/zone-words';

const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: '.' } as const;
const um = 1_000_000;

function facts(
  zones: Partial<ZoneWordFacts['zones']>,
  dial: 'radius' | 'diameter' = 'radius',
): ZoneWordFacts {
  return {
    run: { dial },
    feature: { kind: 'outside' },
    dialUnit: 'mm',
    pieces: Array.from({ length: 60 }, (_, i) => ({ mark: `W${i + 1}`, ordinal: i + 1 })),
    zones: {
      steps: [],
      state: 'set up',
      inARow: 0,
      move: null,
      gap: null,
      nextOrdinal: 1,
      spreadFits: null,
      ...zones,
    },
  };
}
const step = (mark: string, zone: string, means: string) => ({ piece: { mark }, zone, means });

describe('zoneWords', () => {
  it('asks for five in a row, and counts them', () => {
    expect(zoneWords(facts({}), mm)).toEqual({
      title: 'Set up: five in a row',
      says: 'Five pieces one after another in the middle half of the limits, then the batch may run. Make W1 and measure it.',
      decide: false,
    });
    const two = { steps: [step('W2', 'green', 'counts')], inARow: 2, nextOrdinal: 3 };
    expect(zoneWords(facts(two), mm)).toEqual({
      title: 'Two of five',
      says: 'W2 is in the middle half. Three more in a row and the batch may run. Make W3 and measure it.',
      decide: false,
    });
    const done = { steps: [step('W60', 'green', 'counts')], inARow: 4, nextOrdinal: null };
    expect(zoneWords(facts(done), mm).says).toContain('The batch is made.');
  });

  it('says why the count starts again', () => {
    const again = { steps: [step('W3', 'yellow high', 'starts again')], nextOrdinal: 4 };
    expect(zoneWords(facts(again), mm)).toMatchObject({
      title: 'Count again from none',
      says: 'W3 is in the high quarter. Another outside the middle half asks for an adjustment. Make W4 and measure it.',
    });
  });

  it('lets it run, and says when to measure next', () => {
    const steps = [step('W5', 'green', 'approves')];
    const run = facts({ state: 'run', steps, inARow: 5, nextOrdinal: 6 });
    expect(zoneWords(run, mm)).toEqual({
      title: 'Run on',
      says: 'W5 is the fifth in a row. Measure W6 next, and each piece until it has kept for twelve by itself.',
      decide: false,
    });
    const gap = { samplePieces: 4, meanGap: 24.3 };
    const later = [step('W43', 'green', 'goes on')];
    expect(zoneWords(facts({ state: 'run', steps: later, gap, nextOrdinal: 47 }), mm).says).toBe(
      'W43 is in the middle half. Measure W47 next: every fourth piece, a sixth of the 24 it keeps between adjustments.',
    );
    const often = { samplePieces: 1, meanGap: 7 };
    expect(
      zoneWords(facts({ state: 'run', steps: later, gap: often, nextOrdinal: 44 }), mm).says,
    ).toContain('Measure W44 next: each piece, a sixth of the 7');
    const rare = { samplePieces: 12, meanGap: 72 };
    expect(
      zoneWords(facts({ state: 'run', steps: later, gap: rare, nextOrdinal: 55 }), mm).says,
    ).toContain('every 12th piece');
    expect(zoneWords(facts({ state: 'run', steps: later, gap, nextOrdinal: null }), mm).says).toBe(
      'W43 is in the middle half. The rest may be made.',
    );
    const last = [step('W60', 'green', 'goes on')];
    expect(zoneWords(facts({ state: 'run', steps: last, gap, nextOrdinal: null }), mm).says).toBe(
      'W60 is in the middle half. The batch is made.',
    );
  });

  it('leaves the machine alone until the very next piece has spoken', () => {
    const steps = [step('W9', 'yellow low', 'second wanted')];
    expect(zoneWords(facts({ state: 'second', steps, nextOrdinal: 10 }), mm)).toEqual({
      title: 'Measure W10 too',
      says: 'W9 is in the low quarter. Leave the machine as it is: the very next piece decides.',
      decide: false,
    });
    expect(zoneWords(facts({ state: 'second', steps, nextOrdinal: null }), mm).title).toBe(
      'The batch is made',
    );
  });

  it('moves the mean by so much, on diameter and on the dial', () => {
    const steps = [
      step('W6', 'yellow high', 'second wanted'),
      step('W7', 'yellow high', 'move the mean'),
    ];
    const move = { onDiameterPm: -16 * um, onDialPm: -8 * um };
    expect(zoneWords(facts({ state: 'stop', steps, move }), mm)).toEqual({
      title: 'Move it 0.016 smaller',
      says: 'W6 and W7 are both high. On the radius dial that is 0.008. Then five in a row again.',
      decide: true,
    });
    const low = [
      step('W6', 'yellow low', 'second wanted'),
      step('W7', 'yellow low', 'move the mean'),
    ];
    const up = { onDiameterPm: 25_400_000, onDialPm: 25_400_000 };
    const thou = { ...facts({ state: 'stop', steps: low, move: up }, 'diameter'), dialUnit: 'in' };
    expect(zoneWords(thou as ZoneWordFacts, inch)).toMatchObject({
      title: 'Move it 0.0010 larger',
      says: 'W6 and W7 are both low. On the diameter dial that is 0.0010. Then five in a row again.',
    });
    // A dial in thou on a job in millimetres says what stands on it, every digit.
    const half = {
      ...thou,
      zones: { ...thou.zones, move: { onDiameterPm: -12_700_000, onDialPm: -12_700_000 } },
    };
    expect(zoneWords(half as ZoneWordFacts, mm)).toMatchObject({
      title: 'Move it 0.0005 in smaller',
      says: 'W6 and W7 are both low. On the diameter dial that is 0.0005 in. Then five in a row again.',
    });
    const length = {
      ...facts({ state: 'stop', steps, move }, 'diameter'),
      feature: { kind: 'length' },
    };
    expect(zoneWords(length as ZoneWordFacts, mm).says).toContain('On its dial that is 0.008.');
    expect(zoneWords(facts({ state: 'stop', steps, move: null }), mm)).toMatchObject({
      title: 'Adjust',
      says: 'W6 and W7 are both high. The middle is less than half a division away: turn the insert or find what moved. Then five in a row again.',
    });
  });

  it('does not move the mean for a spread that is too large, nor for one outside', () => {
    const steps = [
      step('W6', 'yellow high', 'second wanted'),
      step('W7', 'yellow low', 'spread too large'),
    ];
    expect(zoneWords(facts({ state: 'stop', steps }), mm)).toEqual({
      title: 'The spread is too large',
      says: 'W6 and W7 are on opposite sides: moving the mean would not help. Look for play, a loose chucking, a worn insert. Then five in a row again.',
      decide: true,
    });
    const out = [step('W8', 'red high', 'outside')];
    expect(zoneWords(facts({ state: 'stop', steps: out }), mm)).toEqual({
      title: 'Stop',
      says: 'W8 is over the upper limit. Measure it again; if it stands, put the machine right and look at the pieces since the last sample. Then five in a row again.',
      decide: true,
    });
    expect(zoneName('red low')).toBe('under the lower limit');
  });
});

describe('zoneSpreadWords', () => {
  it('warns where the scatter leaves no room for zones', () => {
    expect(zoneSpreadWords(0.8, mm)).toBe(
      'Zones want the limits at least six scatters apart; here they are 4.8. They will stop for nothing, and pieces between samples may be out.',
    );
    expect(zoneSpreadWords(0.8, { unit: 'mm', decimal: ',' })).toContain('here they are 4,8.');
    expect(zoneSpreadWords(1, mm)).toBe('');
    expect(zoneSpreadWords(null, mm)).toBe('');
  });
});
