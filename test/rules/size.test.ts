import { describe, expect, it } from 'vitest';
import { gaugeHistory } from '@/lib/rules/gauge-history';
import { gaugeSpreads } from '@/lib/rules/gauge-spreads';
import { sizeOf, type GaugeFacts } from '@/lib/rules/size';
import { mm, um } from './make';

const mic: GaugeFacts = { id: 'mic', resolutionPm: um, uncertaintyPm: 2 * um };
const bare: GaugeFacts = { id: 'bare', resolutionPm: um, uncertaintyPm: null };
const caliper: GaugeFacts = { id: 'caliper', resolutionPm: 10 * um, uncertaintyPm: 20 * um };
const gauges = new Map([mic, bare, caliper].map((gauge) => [gauge.id, gauge]));
const none = new Map();
const read = (gaugeId: string, ...microns: number[]) =>
  microns.map((u) => ({ gaugeId, valuePm: 18 * mm + u * um }));

describe('sizeOf', () => {
  it('combines spread, resolution and the stated figure as JCGM 100 does', () => {
    // By hand: s = 1 µm over 3 readings, s/sqrt 3 = 0.57735; resolution 1/sqrt 12 = 0.28868; stated 2/2 = 1.
    // u = sqrt(1/3 + 1/12 + 1) = 1.190238; nu = 2 (1.190238/0.57735)^4 = 36.125 (JCGM 100, G.2b);
    // t(95.45 %, 36.125): JCGM 100 Table G.2 gives 2.07 at 35 and 2.06 at 40.
    const size = sizeOf(read('mic', -1, 0, 1), gauges, none)!;
    expect(size.valuePm).toBe(18 * mm);
    expect(size.standardPm / um).toBeCloseTo(1.190238, 6);
    expect(size.degrees).toBeCloseTo(36.125, 3);
    expect(size.expandedPm / size.standardPm).toBeGreaterThan(2.06);
    expect(size.expandedPm / size.standardPm).toBeLessThan(2.075);
    expect(size.repeatability).toBe('own spread');
  });

  it('takes one reading at the stated uncertainty of the gauge, with k = 2', () => {
    const size = sizeOf(read('mic', 3), gauges, none)!;
    expect(size.standardPm / um).toBeCloseTo(Math.sqrt(1 + 1 / 12), 9);
    expect(size.expandedPm / size.standardPm).toBeCloseTo(2, 4);
    expect(size.repeatability).toBe('stated');
  });

  it('gives no size for one or two readings of a gauge nobody knows anything of', () => {
    expect(sizeOf(read('bare', 3), gauges, none)).toBeNull();
    expect(sizeOf(read('bare', 3, 4), gauges, none)).toBeNull();
    expect(sizeOf(read('bare', 3, 4, 5), gauges, none)).not.toBeNull();
  });

  it('knows one reading better once the gauge has a history', () => {
    const history = gaugeHistory([read('bare', 0, 1, 2), read('bare', 10, 12)].map(gaugeSpreads));
    // By hand: sums of squares 2 and 2, degrees 2 and 1: s_p^2 = 4/3 µm^2 with 3 degrees.
    expect(history.get('bare')!.sdPm / um).toBeCloseTo(Math.sqrt(4 / 3), 9);
    expect(history.get('bare')!.degrees).toBe(3);
    const size = sizeOf(read('bare', 5), gauges, history)!;
    expect(size.standardPm / um).toBeCloseTo(Math.sqrt(4 / 3 + 1 / 12), 9);
    expect(size.repeatability).toBe('gauge history');
  });

  it('lets the finest gauge tell the size, so that a rough check does not spoil it', () => {
    const size = sizeOf([...read('caliper', 40), ...read('mic', 1, 1, 1)], gauges, none)!;
    expect(size.valuePm).toBe(18 * mm + um);
    expect(size.count).toBe(3);
    expect(size.gaugeId).toBe('mic');
  });

  it('does not call readings that are all alike perfectly known', () => {
    const size = sizeOf(read('bare', 2, 2, 2, 2), gauges, none)!;
    expect(size.standardPm / um).toBeCloseTo(1 / Math.sqrt(12), 9);
  });

  it('gives null for no readings, or for a gauge that is not in the register', () => {
    expect(sizeOf([], gauges, none)).toBeNull();
    expect(sizeOf(read('unheard of', 1, 2, 3), gauges, none)).toBeNull();
  });

  it('does not lose a nanometre at a nominal of two metres', () => {
    const far = [0, 1, 2].map((pm) => ({ gaugeId: 'mic', valuePm: 2_000_000_000_000 + pm }));
    expect(sizeOf(far, gauges, none)!.valuePm).toBe(2_000_000_000_001);
  });
});

describe('gaugeHistory', () => {
  it('passes over sets of one reading and keeps gauges apart', () => {
    const history = gaugeHistory(
      [read('mic', 1), [...read('mic', 0, 2), ...read('bare', 7)]].map(gaugeSpreads),
    );
    expect(history.get('mic')!.degrees).toBe(1);
    expect(history.get('mic')!.sdPm / um).toBeCloseTo(Math.SQRT2, 12);
    expect(history.has('bare')).toBe(false);
  });
});
