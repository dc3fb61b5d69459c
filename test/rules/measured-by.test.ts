import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import { measuredBy } from '@/lib/rules/measured-by';
import { correctionOf } from './make';
import { smallJob } from './small-job';

const six = (microns: number) => Array.from({ length: 6 }, () => microns);

describe('measuredBy', () => {
  it('names those whose readings tell a size, once each, and nobody else', () => {
    const { sheet } = smallJob({ bores: [six(10)], shafts: [six(0)] });
    const other = sheet.gauges[1]!;
    const by: Record<number, string> = {
      1: 'ruth',
      2: 'hale',
      3: 'ruth',
      4: 'struck',
      5: 'coarse',
    };
    const readings = sheet.readings.map((reading) => ({
      ...reading,
      personId: by[reading.seq] ?? null,
      ...(reading.seq === 5 ? { gaugeId: other.id } : {}),
    }));
    const gauges = sheet.gauges.map((gauge) =>
      gauge.id === other.id ? { ...gauge, resolutionPm: 10_000_000 } : gauge,
    );
    const corrections = [correctionOf(4, { kind: 'void' })];
    const view = jobView({ ...sheet, readings, gauges, corrections });
    expect(measuredBy(view, view.fits[0]!)).toEqual(['ruth', 'hale']);
    const none = smallJob({});
    expect(measuredBy(none, none.fits[0]!)).toEqual([]);
  });
});
