import { describe, expect, it } from 'vitest';
import { paperRows } from '@/app/ui/fits/paper-rows';
import { clearanceDoubt } from '@/lib/rules/clearance-doubt';
import { pairLook } from '@/lib/rules/pair-look';
import { um } from './make';
import { smallJob } from './small-job';

describe('clearanceDoubt', () => {
  // Factors from JCGM 100, table G.2, column 95.45 %: 4.53 at 2 degrees, 2.87 at 4, 2.13 at 20, 2.00 at infinity.
  it.each([
    ['two means of three readings: 4 degrees', 1, 2, 1, 2, Math.SQRT2 * 2.87],
    ['one well known: its own degrees are all there are', 1, 2, 0, Infinity, 4.53],
    ['both taken as known', 1, Infinity, 1, Infinity, Math.SQRT2 * 2],
    // nu = (1 + 1)^2 / (1/5 + 0) = 20 by G.2b: 2.13.
    ['six readings with a known one', 1, 5, 1, Infinity, Math.SQRT2 * 2.13],
  ])('%s', (_, u1, nu1, u2, nu2, wanted) => {
    const U = clearanceDoubt(
      { standardPm: u1 * um, degrees: nu1 },
      { standardPm: u2 * um, degrees: nu2 },
    );
    expect(U / um).toBeCloseTo(wanted, 1);
  });

  it('is what is shown of a pair, kept when it is made final, and printed', () => {
    const view = smallJob({ bores: [[9, 10, 11]], shafts: [[-1, 0, 1]], fit: { maxPm: 30 * um } });
    const fit = view.fits[0]!;
    const [pair] = fit.pairs;
    const [bore, shaft] = [fit.internals[0]!.size!, fit.externals[0]!.size!];
    const U = clearanceDoubt(bore, shaft);
    // Not the 2 u of readings without end.
    expect(U).toBeGreaterThan(2.3 * pair!.standardPm);
    expect(pair!.expandedPm).toBe(U);
    const by = { act: 'made final', at: '2026-03-14T11:00:00Z', personId: null } as const;
    expect(pairLook(view, fit, pair!, by).uncertaintyPm).toBe(Math.round(U));
    const names = { mark: (id: string) => id, person: () => null };
    const mm = { unit: 'mm', decimal: '.' } as const;
    expect(paperRows(fit, um, mm, names, (at) => at)[0]!.clear).toBe('0.010 ± 0.003');
  });
});
