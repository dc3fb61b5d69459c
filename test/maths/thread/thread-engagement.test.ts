import { describe, expect, it } from 'vitest';
import { isoMetricThread } from '@/lib/maths/thread/iso-metric-thread';
import { threadEngagement } from '@/lib/maths/thread/thread-engagement';

describe('threadEngagement', () => {
  it('calls a hole of the basic minor diameter full', () => {
    const drill = isoMetricThread(10, 1.5).minorInternalMm;
    const { basicPercent, americanPercent } = threadEngagement({ major: 10, pitch: 1.5, drill });
    expect(basicPercent).toBeCloseTo(100, 10);
    // 5H/8 is five sixths of 3H/4.
    expect(americanPercent).toBeCloseTo(500 / 6, 10);
  });

  it('gives the percentages of the American tables for 2-56', () => {
    // Machinery's Handbook 31st ed., tap drill sizes and percentage of thread, whole percents.
    const percents = [0.073, 0.0709, 0.07, 0.0689].map((drill) =>
      Math.round(threadEngagement({ major: 0.086, pitch: 1 / 56, drill }).americanPercent),
    );
    expect(percents).toEqual([56, 65, 69, 74]);
  });

  it.each([{ pitch: 0 }, { drill: 0 }, { major: NaN }, { drill: Infinity }])(
    'refuses %o',
    (part) => {
      expect(() => threadEngagement({ major: 10, pitch: 1.5, drill: 8.5, ...part })).toThrow(
        expect.objectContaining({ code: 'thread-engagement/size' }),
      );
    },
  );
});
