import { describe, expect, it } from 'vitest';
import { stripSentence } from '@/lib/text/strip-sentence';
import { inch, mm, stripVariants } from '../ui/gallery/strips';

const sentence = (name: string) => stripSentence('P5 outside', stripVariants[name]!);

// The two model sentences are those of look.md section 6, with "Inside" in full as section 7 asks.
describe('stripSentence', () => {
  it('says name, size, verdict, limits and partner in the order they are drawn', () => {
    expect(sentence('Inside')).toBe(
      'P5 outside. Size so far 17.999 plus or minus 0.001 millimetres, from 4 readings. Inside. ' +
        'Limits 17.996 to 18.000, aim 17.998. L5 bore 18.008.',
    );
  });

  it('says a reading off the strip: how far over, held, not counted', () => {
    expect(sentence('Off the strip, and held')).toContain(
      'Last reading 18.498, 0.498 over the upper limit, held, not counted.',
    );
    expect(sentence('Off the strip, and held')).toContain('from 4 readings');
    expect(sentence('Off the strip, and held')).not.toContain('1 reading held');
  });

  it('says how far out and which way', () => {
    expect(sentence('Out')).toContain('Out, 0.002 large.');
    expect(sentence('Unsure')).toContain('Unsure, too near 18.000 to say.');
  });

  it('says a reading under the lower limit', () => {
    const low = {
      ...stripVariants['Inside']!,
      readings: [{ valuePm: mm(17.99), state: 'counted' as const, last: true }],
      size: null,
    };
    expect(stripSentence('P5', low)).toContain('Last reading 17.990, 0.006 under the lower limit.');
  });

  it('says that one reading is no size yet, and how many there are', () => {
    expect(sentence('Too few readings')).toContain(
      'One reading, 17.9985 millimetres, no size yet.',
    );
    expect(sentence('No limits at all')).toContain(
      '2 readings, the last 52,03 millimetres, no size yet. No limits.',
    );
    expect(
      stripSentence('P5', { ...stripVariants['Inside']!, readings: [], size: null }),
    ).toContain('No reading yet.');
    const held = [{ valuePm: mm(17.999), state: 'held' as const }];
    expect(
      stripSentence('P5', { ...stripVariants['Inside']!, readings: held, size: null }),
    ).toContain('P5. No size yet');
  });

  it('says what is held or struck beside', () => {
    expect(sentence('Struck out and doubtful')).toContain('1 reading held, 1 reading struck out.');
  });

  it('says where to stop and what the cut will leave', () => {
    expect(sentence('Before the cut')).toContain(
      'Turn to 18.006, after this cut 18.049 plus or minus 0.002 expected.',
    );
    expect(sentence('Before the cut')).toContain('Still to cut, 0.084 over.');
  });

  it('says inches in full, and the decimal mark of the person', () => {
    expect(sentence('Inches')).toContain('0.9844 plus or minus 0.0001 inches');
    const comma = { ...stripVariants['Inches']!, decimal: ',' as const };
    expect(stripSentence('P5', comma)).toContain('Limits 0,9842 to 0,9848');
  });

  it('says one limit as one', () => {
    expect(sentence('One limit only')).toContain('No larger than 0.020.');
    const lower = { ...stripVariants['One limit only']!, lowerPm: mm(0.01), upperPm: null };
    expect(stripSentence('P5', lower)).toContain('No smaller than 0.010.');
  });

  it('says a partner that is not measured, with its limits', () => {
    const partner = { ...stripVariants['Inside']!.partner!, sizePm: null };
    expect(stripSentence('P5', { ...stripVariants['Inside']!, partner })).toContain(
      'L5 bore not measured, limits 18.000 to 18.018.',
    );
  });

  it('never shows a limit as a size it is not', () => {
    const half = { ...stripVariants['Inside']!, upperPm: 18_000_500_000 };
    expect(stripSentence('P5', half)).toContain('Limits 17.996 to 18.0005');
    const drawnInInches = { ...half, unit: 'in' as const, resolutionPm: inch(0.0001) };
    expect(stripSentence('P5', drawnInInches)).toContain('Limits 0.70850 to 0.70868');
  });
});
