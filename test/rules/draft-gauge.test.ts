import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draftGauge, gaugeDraftOf } from '@/lib/rules/draft-gauge';
import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import { gauge as shapes, type Gauge } from '@/lib/schema/gauge';

const um = 1_000_000;
const inchMic: Gauge = {
  id: '0195920c-0000-7000-8005-000000000009',
  version: 1,
  createdAt: '2026-03-14T10:00:00Z',
  struckAt: null,
  name: 'Inch mic',
  kind: 'micrometer',
  unit: 'in',
  resolutionPm: 2_540_000,
  uncertaintyPm: 3_810_000,
  rangeLowPm: 0,
  rangeHighPm: 25_400_000_000,
  checkedOn: '2026-01-20',
  note: '',
  ...untaughtGauge,
};

describe('draftGauge', () => {
  it('takes a gauge with what is known of it and leaves the rest open', () => {
    const draft = { ...gaugeDraftOf(null, '.'), name: 'Mic 1', resolution: '0.001' };
    expect(draftGauge(draft, '.')).toMatchObject({
      kind: 'gauge',
      gauge: { resolutionPm: um, uncertaintyPm: null, rangeLowPm: null, checkedOn: null },
    });
  });

  it('takes 0.0001 in with the comma of the person', () => {
    const draft = {
      ...gaugeDraftOf(null, ','),
      name: 'Inch mic',
      unit: 'in' as const,
      resolution: '0,0001',
    };
    expect(draftGauge(draft, ',')).toMatchObject({ gauge: { resolutionPm: 2_540_000 } });
  });

  it('gives back the gauge it was opened with, whatever its figures', () => {
    const length = fc.integer({ min: 1, max: 30_000_000_000 });
    fc.assert(
      fc.property(length, length, fc.constantFrom('mm' as const, 'in' as const), (a, b, unit) => {
        const known: Gauge = { ...inchMic, unit, resolutionPm: a, uncertaintyPm: b };
        const read = draftGauge(gaugeDraftOf(known, '.'), '.');
        expect(read).toMatchObject({ gauge: { resolutionPm: a, uncertaintyPm: b } });
      }),
    );
    const { kind, gauge } = draftGauge(gaugeDraftOf(inchMic, ','), ',') as never;
    expect(kind).toBe('gauge');
    expect(shapes.New.safeParse({ id: inchMic.id, ...(gauge as object) }).success).toBe(true);
  });

  it.each([
    ['no name', { name: '' }, { field: 'name', problem: 'missing' }],
    ['no step', { resolution: '' }, { field: 'resolution', problem: 'missing' }],
    ['a step of nothing', { resolution: '0' }, { field: 'resolution', problem: 'not above zero' }],
    ['a step that is no size', { resolution: 'fine' }, { field: 'resolution' }],
    ['an end before the beginning', { rangeHigh: '0', rangeLow: '1' }, { field: 'rangeHigh' }],
  ])('names what has to be put right: %s', (_, over, fault) => {
    const draft = { ...gaugeDraftOf(null, '.'), name: 'Mic', resolution: '0.001', ...over };
    expect(draftGauge(draft, '.')).toMatchObject({ kind: 'fault', fault });
  });
});
