import { describe, expect, it } from 'vitest';
import { applyCorrection } from '@/lib/rules/apply-correction';
import { standing } from '@/lib/rules/standing';
import { correctionOf, readingOf, um } from './make';

const taken = standing([readingOf(1, { text: '18.1' })], [])[0]!;

describe('applyCorrection', () => {
  it('takes text, unit, value and last place of what it should have read', () => {
    const mend = correctionOf(1, {
      kind: 'mistyped',
      text: '.7093',
      unit: 'in',
      valuePm: 18_016_220_000,
      resolutionPm: 2_540_000,
    });
    expect(applyCorrection(mend, taken)).toMatchObject({
      text: '.7093',
      firstText: '18.1',
      unit: 'in',
      valuePm: 18_016_220_000,
      resolutionPm: 2_540_000,
    });
  });

  it('keeps the reason given before when a later correction gives none', () => {
    const why = correctionOf(1, { kind: 'void', reason: 'measured again' });
    const back = correctionOf(1, { kind: 'restore' });
    expect(applyCorrection(back, applyCorrection(why, taken)).reason).toBe('measured again');
    const other = correctionOf(1, { kind: 'restore', reason: 'it was right' });
    expect(applyCorrection(other, applyCorrection(why, taken)).reason).toBe('it was right');
  });

  it('does not change the reading it is given', () => {
    const before = structuredClone(taken);
    applyCorrection(correctionOf(1, { kind: 'void' }), taken);
    expect(taken).toEqual(before);
    expect(taken.resolutionPm).toBe(um);
  });
});
