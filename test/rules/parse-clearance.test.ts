import { describe, expect, it } from 'vitest';
import { parseClearance } from '@/lib/rules/parse-clearance';
import { parseSigned } from '@/lib/rules/parse-signed';

const mm = { decimal: '.', unit: 'mm' } as const;
const um = 1_000_000;

describe('parseClearance', () => {
  it('puts the aim in the middle where none is given', () => {
    expect(parseClearance({ min: '0.008', max: '0.012', aim: '' }, mm)).toEqual({
      kind: 'wanted',
      minPm: 8 * um,
      maxPm: 12 * um,
      aimPm: 10 * um,
    });
  });

  it('takes interference as a negative clearance', () => {
    expect(parseClearance({ min: '-0.020', max: '-0.005', aim: '-.012' }, mm)).toEqual({
      kind: 'wanted',
      minPm: -20 * um,
      maxPm: -5 * um,
      aimPm: -12 * um,
    });
  });

  it('takes thou in a metric job, exactly', () => {
    expect(parseClearance({ min: '0.3 thou', max: '0.5 thou', aim: '' }, mm)).toMatchObject({
      minPm: 7_620_000,
      maxPm: 12_700_000,
    });
  });

  it.each([
    [{ min: '', max: '1', aim: '' }, 'min'],
    [{ min: '1', max: '1', aim: '' }, 'max'],
    [{ min: '1', max: '2', aim: '3' }, 'aim'],
    [{ min: '1', max: '2', aim: 'x' }, 'aim'],
  ])('says which field is wrong in %o', (text, field) => {
    expect(parseClearance(text, mm)).toMatchObject({ kind: 'wrong', field });
  });
});

describe('parseSigned', () => {
  it('keeps the sign as its own', () => {
    expect(parseSigned('-0.02', mm)).toMatchObject({ kind: 'length', pm: -20 * um });
    expect(parseSigned('+20 um', mm)).toMatchObject({ kind: 'length', pm: 20 * um });
  });
});
