import { describe, expect, it } from 'vitest';
import { formFindings } from '@/lib/maths/form/form-findings';
import { twoPointForm } from '@/lib/maths/form/two-point-form';

const findings = (diametersMm: number[][], leastToldMm = 0) =>
  formFindings(twoPointForm({ side: 'internal', diametersMm }), leastToldMm);

// Amounts by hand from the definitions of two-point sizes (ISO 14405-1); doubles near 20 allow 1e-12 mm.
const amount = (mm: number) => expect.closeTo(mm, 11);

describe('formFindings', () => {
  it('names the most oval station and its wide direction', () => {
    expect(
      findings([
        [20.0, 20.004],
        [20.0, 20.01],
      ])[0],
    ).toEqual({ kind: 'oval', amountMm: amount(0.01), station: 1, widestDirection: 1 });
  });

  it('names the first of two stations that are equally oval', () => {
    const [oval] = findings([
      [20.0, 20.5],
      [20.0, 20.5],
    ]);
    expect(oval).toMatchObject({ kind: 'oval', station: 0 });
  });

  it('names the wide end of a taper', () => {
    expect(findings([[20.01], [20.0]])).toEqual([
      { kind: 'taper', amountMm: amount(0.01), wideEnd: 'first' },
    ]);
    expect(findings([[20.0], [20.01]])).toEqual([
      { kind: 'taper', amountMm: amount(0.01), wideEnd: 'last' },
    ]);
  });

  it('tells a barrel from a waist and names the station', () => {
    expect(findings([[20.0], [20.003], [20.0], [20.0]])).toEqual([
      { kind: 'barrel', amountMm: amount(0.003), station: 1 },
    ]);
    expect(findings([[20.0], [20.0], [19.996], [20.0]])).toEqual([
      { kind: 'waist', amountMm: amount(0.004), station: 2 },
    ]);
  });

  it('puts the largest first and leaves out what is smaller than can be told', () => {
    const rows = [
      [20.01, 20.006],
      [20.004, 20.0],
      [20.004, 20.0],
    ];
    expect(findings(rows).map((one) => one.kind)).toEqual(['taper', 'oval', 'waist']);
    expect(findings(rows, 0.0045).map((one) => one.kind)).toEqual(['taper']);
    expect(findings(rows, 0.02)).toEqual([]);
  });

  it('finds nothing in a straight round feature', () => {
    expect(
      findings([
        [20, 20],
        [20, 20],
        [20, 20],
      ]),
    ).toEqual([]);
  });

  it('takes the rounding of doubles for nothing', () => {
    expect(findings([[20.01], [(20.01 + 20.03) / 2], [20.03]]).map((one) => one.kind)).toEqual([
      'taper',
    ]);
  });

  it('refuses a least amount below zero', () => {
    expect(() => findings([[20]], -0.001)).toThrow(
      expect.objectContaining({ code: 'form-findings/least-told' }),
    );
  });
});
