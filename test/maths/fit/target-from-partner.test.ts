import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairClearance } from '@/lib/maths/fit/pair-clearance';
import { targetFromPartner } from '@/lib/maths/fit/target-from-partner';

const um = 1_000_000;
const fit = { minPm: 7 * um, aimPm: 10 * um, maxPm: 13 * um };
const bore = { sizePm: 18_008 * um, uPm: 0 };

describe('targetFromPartner', () => {
  it('makes a shaft smaller than its bore by the fit', () => {
    const target = targetFromPartner({ make: 'external', partner: bore, uMadePm: 0, fit });
    expect(target).toEqual({
      aimPm: 17_998 * um,
      lowerPm: 17_995 * um,
      upperPm: 18_001 * um,
      guardPm: 0,
      working: { kind: 'band', lowerPm: 17_995 * um, upperPm: 18_001 * um },
      aimIsSafe: true,
    });
  });

  it('makes a bore larger than its shaft by the fit', () => {
    const target = targetFromPartner({ make: 'internal', partner: bore, uMadePm: 0, fit });
    expect([target.lowerPm, target.aimPm, target.upperPm]).toEqual([
      18_015 * um,
      18_018 * um,
      18_021 * um,
    ]);
  });

  it('makes a shaft larger than its bore for an interference', () => {
    const press = { minPm: -30 * um, aimPm: -20 * um, maxPm: -10 * um };
    const target = targetFromPartner({ make: 'external', partner: bore, uMadePm: 0, fit: press });
    expect([target.lowerPm, target.aimPm, target.upperPm]).toEqual([
      18_018 * um,
      18_028 * um,
      18_038 * um,
    ]);
  });

  it('takes both uncertainties off both limits', () => {
    // 0.3 and 0.4 um combine to 0.5 um; 1.65 x 0.5 = 0.825 um (ISO 14253-1).
    const target = targetFromPartner({
      make: 'external',
      partner: { ...bore, uPm: 300_000 },
      uMadePm: 400_000,
      fit,
    });
    expect(target.guardPm).toBe(825_000);
    expect(target.working).toEqual({
      kind: 'band',
      lowerPm: 17_995_825_000,
      upperPm: 18_000_175_000,
    });
  });

  it('says by how much the gauges are too coarse to prove the fit', () => {
    // 3 um: guard 4.95 um on either side of a band of 6 um wants 3.9 um.
    const target = targetFromPartner({ make: 'external', partner: bore, uMadePm: 3 * um, fit });
    expect(target.working).toEqual({ kind: 'none', wantingPm: 3_900_000 });
    expect(target.aimIsSafe).toBe(false);
  });

  it('says when the aim is too near a limit to be proved', () => {
    const near = { ...fit, aimPm: 12 * um };
    const target = targetFromPartner({ make: 'external', partner: bore, uMadePm: um, fit: near });
    expect(target.working.kind).toBe('band');
    expect(target.aimIsSafe).toBe(false);
    expect(targetFromPartner({ make: 'external', partner: bore, uMadePm: um, fit }).aimIsSafe).toBe(
      true,
    );
  });

  it('counts the ends of the working band in, and knows a band of one size', () => {
    // 1 um: guard 1.65 um, so 8.65 to 11.35 um of clearance are proved.
    const at = (aimPm: number) =>
      targetFromPartner({ make: 'external', partner: bore, uMadePm: um, fit: { ...fit, aimPm } });
    expect(at(8_650_000).aimIsSafe).toBe(true);
    expect(at(8_649_999).aimIsSafe).toBe(false);
    expect(at(11_350_000).aimIsSafe).toBe(true);
    expect(at(11_350_001).aimIsSafe).toBe(false);
    // Guard 1.65 um on a band of 3.3 um leaves the one size in the middle.
    const narrow = { minPm: 7 * um, aimPm: 8_650_000, maxPm: 10_300_000 };
    const one = targetFromPartner({ make: 'external', partner: bore, uMadePm: um, fit: narrow });
    const only = 18_008 * um - 8_650_000;
    expect(one.working).toEqual({ kind: 'band', lowerPm: only, upperPm: only });
    expect(one.aimIsSafe).toBe(true);
  });

  it('lets the aim stand on a limit of the fit', () => {
    const aims = [fit.minPm, fit.maxPm].map(
      (aimPm) =>
        targetFromPartner({ make: 'external', partner: bore, uMadePm: 0, fit: { ...fit, aimPm } })
          .aimIsSafe,
    );
    expect(aims).toEqual([true, true]);
  });

  it('proves the fit of every size in its working band and of none outside it', () => {
    const questions = fc.record({
      make: fc.constantFrom('internal' as const, 'external' as const),
      uPartnerPm: fc.integer({ min: 0, max: 900_000 }),
      uMadePm: fc.integer({ min: 0, max: 900_000 }),
      part: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(questions, ({ make, uPartnerPm, uMadePm, part }) => {
        const partner = { ...bore, uPm: uPartnerPm };
        const { working } = targetFromPartner({ make, partner, uMadePm, fit });
        if (working.kind === 'none') return;
        const verdictAt = (sizePm: number) => {
          const made = { sizePm, uPm: uMadePm };
          const pair =
            make === 'external' ? { bore: partner, shaft: made } : { bore: made, shaft: partner };
          return pairClearance({ ...pair, fit }).verdict.kind;
        };
        const span = working.upperPm - working.lowerPm;
        for (const sizePm of [
          working.lowerPm,
          working.lowerPm + Math.floor(part * span),
          working.upperPm,
        ]) {
          expect(['inside', 'near']).toContain(verdictAt(sizePm));
        }
        expect(['unsure', 'out']).toContain(verdictAt(working.lowerPm - 1));
        expect(['unsure', 'out']).toContain(verdictAt(working.upperPm + 1));
      }),
    );
  });

  it.each([
    ['target-from-partner/size', { partner: { sizePm: 10.5, uPm: 0 } }],
    ['target-from-partner/size', { partner: { sizePm: 5 * um, uPm: 0 } }],
    ['target-from-partner/uncertainty', { partner: { ...bore, uPm: NaN } }],
    ['target-from-partner/uncertainty', { uMadePm: -1 }],
    ['target-from-partner/fit', { fit: { minPm: 2, aimPm: 1, maxPm: 3 } }],
  ])('refuses by %s', (code, part) => {
    const good = { make: 'external', partner: bore, uMadePm: 0, fit } as const;
    expect(() => targetFromPartner({ ...good, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
