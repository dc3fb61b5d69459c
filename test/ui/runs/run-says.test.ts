import { describe, expect, it } from 'vitest';
import { runSays } from '@/app/ui/runs/run-says';
import { um } from '@/test/rules/make';
import { smallRun, wander } from '@/test/rules/small-run';

const mm = { unit: 'mm', decimal: '.' } as const;
const rising = [-9, -7, -6, -4, -3, -1, 0, 2];
const small = {
  sizes: rising,
  feature: { lowerPm: -10 * um, upperPm: 10 * um },
  run: { dial: 'radius', divisionPm: um / 2 },
} as const;

describe('what a run says to do', () => {
  it('is what its drift asks for, to be decided only where the batch meets the limit', () => {
    expect(runSays(smallRun({ ...small, of: 30 }), mm)).toMatchObject({
      title: expect.stringMatching(/ more, then act$/) as string,
      decide: true,
    });
    expect(runSays(smallRun({ ...small, of: 10 }), mm)).toMatchObject({
      title: 'The batch should stay inside',
      summary: 'growing 0.0015 a piece; 4 more before the limit',
      decide: false,
    });
  });

  it('is to move a steady run that is too near a limit, and not to leave it alone', () => {
    const near = smallRun({ sizes: wander(12, 1, -3), run: { divisionPm: um / 10 } });
    const { title, says, decide } = runSays(near, mm);
    expect(title).toBe('Steady, but too near the top');
    expect(runSays(near, mm).summary).toBe('steady, but too near the top');
    expect(says).not.toContain('Leave the machine alone');
    expect(decide).toBe(true);
    const clear = smallRun({ sizes: wander(12, 1, -13), run: { divisionPm: um / 10 } });
    expect(runSays(clear, mm)).toMatchObject({ title: 'Steady', decide: false });
  });

  it('is what the zones say alone, where the batch runs by them', () => {
    const zones = { ...small.run, zones: true };
    expect(runSays(smallRun({ ...small, run: zones, of: 30 }), mm).title).not.toMatch(/act/);
    const out = smallRun({ ...small, sizes: [...rising, 12], run: zones, of: 30 });
    expect(runSays(out, mm)).toMatchObject({
      title: 'Stop',
      summary: 'by zones: Stop',
      decide: true,
    });
    // With one limit there are no zones: the drift is said.
    const one = smallRun({
      ...small,
      feature: { lowerPm: null, upperPm: 10 * um },
      run: zones,
      of: 30,
    });
    expect(runSays(one, mm).says).toContain('Growing');
  });
});
