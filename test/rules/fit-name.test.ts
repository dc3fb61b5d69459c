import { describe, expect, it } from 'vitest';
import { fitName } from '@/lib/rules/fit-name';
import { Name } from '@/lib/schema/common';

const bush = 'Guide bush, phosphor bronze, for the cross-slide nut housing';
const shaft = 'Guide shaft, ground silver steel, of the cross-slide housing';

describe('what a fit is called when nobody gave it a name', () => {
  it.each([
    ['Ram', 'Barrel', undefined, 'Ram in barrel'],
    ['Ram', 'Barrel', 'Front seat', 'Ram in barrel, front seat'],
    ['Ram', bush, undefined, `Ram in ${bush.toLowerCase()}`],
    [
      shaft,
      bush,
      undefined,
      'Guide shaft, ground silver steel, of the cross-slide… in guide bush, phosphor bronze, for the cross-slide nut…',
    ],
    [
      'Ram',
      bush.repeat(2),
      undefined,
      `Ram in ${bush.toLowerCase()}guide bush, phosphor bronze, for the cross-slide nut…`,
    ],
    ['x'.repeat(58), 'y'.repeat(58), undefined, `${'x'.repeat(58)} in ${'y'.repeat(58)}`],
    ['x'.repeat(59), 'y'.repeat(58), undefined, `${'x'.repeat(57)}… in ${'y'.repeat(58)}`],
  ])('%s, %s, %s', (external, internal, also, name) => {
    expect(fitName(external, internal, also)).toBe(name);
  });

  it.each([
    [shaft, bush, undefined],
    [shaft.repeat(2), bush.repeat(2), 'Bore at the tailstock end'],
    ['x'.repeat(120), 'y'.repeat(120), 'z'.repeat(120)],
    ['\u{1F529}'.repeat(60), '\u{1F529}'.repeat(60), undefined],
  ])('is a name the notebook takes: %s, %s, %s', (external, internal, also) => {
    const name = fitName(external, internal, also);
    expect(Name.safeParse(name).success).toBe(true);
    expect(encodeURIComponent(name)).toContain('%E2%80%A6'); // it throws at half a character
  });
});
