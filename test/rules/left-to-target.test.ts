import { describe, expect, it } from 'vitest';
import { entryPartner } from '@/lib/rules/entry-partner';
import { leftToTarget } from '@/lib/rules/left-to-target';
import { um } from './make';
import { smallJob } from './small-job';

describe('what is left on a piece', () => {
  it('goes by the size that governs its fit, as the target card has it', () => {
    // L1 10: P1 is wanted at 0; tapered, its largest place is 30.
    const shaft = smallJob({
      bores: [[10, 10, 10, 10, 10, 10]],
      shafts: [[20, 20, 25, 25, 30, 30]],
      fit: { governs: 'extreme' },
    });
    const [target] = shaft.fits[0]!.toMake;
    const cell = shaft.cell(target!.pieceId, shaft.fits[0]!.externalFeature.id);
    const left = (governs: 'extreme' | 'mean') =>
      leftToTarget(cell, target!, governs, shaft.cells)! / um;
    expect(left('extreme')).toBe(30);
    expect(left('mean')).toBe(25);
    expect(target!.leftPm! / um).toBe(30);
  });

  it('of a bore is up to the shaft it is made to, and is aimed at there too', () => {
    const job = smallJob({
      bores: [[-40, -40, -40, -40, -40, -40]],
      shafts: [[0, 0, 0, 0, 0, 0]],
      pairs: [{ bore: 0, shaft: 0, state: 'locked' }],
    });
    const [target] = job.fits[0]!.toBore;
    const at = { pieceId: target!.pieceId, featureId: job.fits[0]!.internalFeature.id };
    const cell = job.cell(at.pieceId, at.featureId);
    expect(leftToTarget(cell, target!, 'mean', job.cells)! / um).toBe(50);
    const partner = entryPartner(job, at.pieceId, at.featureId)!;
    expect(partner.aimPm).toBe(target!.targetPm);
    expect(partner.aimPm! / um - 18_000).toBe(10);
  });
});
