import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drillForEngagement } from '@/lib/maths/thread/drill-for-engagement';
import { threadEngagement } from '@/lib/maths/thread/thread-engagement';

describe('drillForEngagement', () => {
  it('stands between its neighbours of the rack, the larger with less thread', () => {
    const wanted = fc.record({
      majorMm: fc.double({ min: 3, max: 30, noNaN: true }),
      percent: fc.double({ min: 40, max: 100, noNaN: true }),
      rackStepMm: fc.constantFrom(0.05, 0.1, 0.5),
    });
    fc.assert(
      fc.property(wanted, (question) => {
        const found = drillForEngagement({ ...question, pitchMm: 0.75 });
        expect(found.up.drillMm).toBeGreaterThanOrEqual(found.exactMm - 1e-9);
        expect(found.down.drillMm).toBeLessThanOrEqual(found.exactMm + 1e-9);
        expect(found.up.drillMm - found.down.drillMm).toBeLessThan(question.rackStepMm * 1.001);
        expect(found.up.percent).toBeLessThanOrEqual(question.percent + 1e-6);
        expect(found.down.percent).toBeGreaterThanOrEqual(question.percent - 1e-6);
      }),
    );
  });

  it('names an exact drill of the rack twice', () => {
    // M10 x 1.5 with 8.5: (10 - 8.5)/(1.0825318 x 1.5) = 92.376 %.
    const percent = threadEngagement({ major: 10, pitch: 1.5, drill: 8.5 }).basicPercent;
    const found = drillForEngagement({ majorMm: 10, pitchMm: 1.5, percent, rackStepMm: 0.1 });
    expect([found.down.drillMm, found.up.drillMm]).toEqual([8.5, 8.5]);
  });

  it.each([{ percent: 0 }, { percent: 101 }, { rackStepMm: 0 }, { pitchMm: -1 }, { majorMm: NaN }])(
    'refuses %o',
    (part) => {
      const good = { majorMm: 6, pitchMm: 1, percent: 75, rackStepMm: 0.1 };
      expect(() => drillForEngagement({ ...good, ...part })).toThrow(
        expect.objectContaining({ code: 'drill-for-engagement/wanted' }),
      );
    },
  );
});
