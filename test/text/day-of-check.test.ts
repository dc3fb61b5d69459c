import { afterAll, expect, it, vi } from 'vitest';

const own = process.env['TZ'];
afterAll(() => {
  if (own === undefined) delete process.env['TZ'];
  else process.env['TZ'] = own;
});

it.each(['America/Los_Angeles', 'UTC', 'Pacific/Kiritimati'])(
  'says the day a gauge was checked as it was written, in %s',
  async (zone) => {
    process.env['TZ'] = zone;
    // The time zone is taken when the words are loaded.
    vi.resetModules();
    const { gaugeWords } = await import('@/lib/text/gauge-words');
    const gauge = {
      unit: 'mm' as const,
      resolutionPm: 1_000_000,
      uncertaintyPm: null,
      rangeLowPm: null,
      rangeHighPm: null,
      checkedOn: '2026-03-14',
    };
    expect(gaugeWords(gauge, '.').checked).toBe('14 March 2026');
  },
);
