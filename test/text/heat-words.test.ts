import { describe, expect, it } from 'vitest';
import {
  assumedWords,
  expansionRangeWords,
  farWords,
  hotCareWords,
  hotChartWords,
  hotClearance,
  materialMatchWords,
  readWarmWords,
  temperatureFigure,
  tenMoreWords,
  tightPointWords,
  touchWords,
} from '@/lib/text/heat-words';

const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: ',' } as const;
const um = 1_000_000;
const names = { outer: 'the liner', inner: 'the piston' };
const hot = {
  soaked: [
    { temperatureC: 0, clearancePm: 10.1 * um },
    { temperatureC: 80, clearancePm: 9.5 * um },
  ],
  tightestSoaked: { temperatureC: 80, clearancePm: 9.5 * um },
  bad: { outerC: 20, innerC: 60, clearancePm: 2 * um },
  tight: 'bad' as const,
  badBetween: { lowPm: -um, highPm: 3 * um },
  tenMore: { bothPm: 100, innerPm: -2 * um },
  touchesHotterByC: 51.7,
  touchesSoakedC: null,
};

describe('hot figures in words', () => {
  it('calls every figure an estimate and says how far it may be off', () => {
    expect(tightPointWords(hot, names, mm)).toBe(
      'Estimate: tightest at the bad moment, the liner at 20 °C and the piston at 60 °C, about 0.002 clear; from 0.001 tight to 0.003 clear as the coefficients may be.',
    );
    expect(tightPointWords({ ...hot, tight: 'soaked' }, names, mm)).toBe(
      'Estimate: tightest with both at 80 °C, about 0.010 clear.',
    );
    const sure = { ...hot, badBetween: { lowPm: 2 * um, highPm: 2 * um } };
    expect(tightPointWords(sure, names, mm)).toMatch(/about 0\.002 clear\.$/);
  });

  it('says what ten degrees more would do', () => {
    expect(tenMoreWords(hot, names, mm)).toBe(
      'Ten degrees more on the piston alone takes off about 0.002; on both, changes next to nothing.',
    );
    const wide = { ...hot, tenMore: { bothPm: 3 * um, innerPm: -2 * um } };
    expect(tenMoreWords(wide, names, mm)).toMatch(/on both, gives about 0\.003\.$/);
  });

  it('says when they touch, and that they do', () => {
    expect(touchWords(hot, names, mm)).toBe(
      'They touch when the piston is about 52 °C hotter than the liner at 20 °C.',
    );
    expect(touchWords({ ...hot, touchesHotterByC: null, touchesSoakedC: -48.9 }, names, mm)).toBe(
      'Both at one temperature, they touch at about −49 °C.',
    );
    expect(touchWords({ ...hot, touchesHotterByC: null }, names, mm)).toBe('');
    const pressed = { ...hot, bad: { ...hot.bad, clearancePm: -um } };
    expect(touchWords(pressed, names, mm)).toBe(
      'They touch: how hard they press is not worked out here.',
    );
  });

  it('says what the sizes are taken to be', () => {
    expect(assumedWords({ offPm: -2 * um }, mm)).toBe(
      'Sizes are as they were read, taken to be at 20 °C; nothing is corrected. Had both been 10 °C warmer at the bench, the clearance at 20 °C would be about 0.002 less.',
    );
    expect(assumedWords({ offPm: 2 * um }, mm)).toMatch(/about 0\.002 more\.$/);
    expect(assumedWords({ offPm: 100 }, mm)).toMatch(/at 20 °C would hardly differ\.$/);
    expect(readWarmWords('L1', { temperatureC: 24.5, offPm: -um }, mm)).toBe(
      'L1 was read at 24.5 °C: here it is taken 0.001 smaller, as it would be at 20 °C.',
    );
    expect(readWarmWords('L1', { temperatureC: 10, offPm: um }, mm)).toMatch(/0\.001 larger/);
  });

  it('gives one sentence of care, and no leave', () => {
    expect(hotCareWords).toMatch(/^Hot figures are estimates; they give no leave .* decide\.$/);
  });

  it('says when the coefficients are far from where they were measured', () => {
    expect(farWords([0, 20, 100])).toBeNull();
    expect(farWords([20, 180])).toMatch(/^The coefficients are for room temperature/);
    expect(farWords([-20])).not.toBeNull();
  });

  it('says the chart in a sentence', () => {
    expect(hotChartWords(hot, names, mm)).toMatch(
      /^Clearance of the piston in the liner against temperature: 0\.010 clear at 0 °C to 0\.010 clear at 80 °C, both alike\. Estimate: /,
    );
    const one = { ...hot, soaked: hot.soaked.slice(0, 1) };
    expect(hotChartWords(one, names, mm)).toMatch(/0\.010 clear at 0 °C, both alike/);
  });

  it('writes figures as this person reads them', () => {
    expect(temperatureFigure(-10.04, inch)).toBe('−10');
    expect(temperatureFigure(20.55, inch)).toBe('20,6');
    expect(temperatureFigure(-0.01, mm)).toBe('0');
    expect(hotClearance(-2.54 * um, inch)).toBe('0,0001 tight');
    expect(hotClearance(100, mm)).toBe('touching');
  });
});

describe('materialMatchWords', () => {
  const material = {
    name: 'Mild steel',
    expansionNanoPerC: 11_700,
    lowNanoPerC: 11_300,
    highNanoPerC: 12_200,
  };

  it('says how the name of a part was understood', () => {
    const say = (how: 'own' | 'table' | 'likely') =>
      materialMatchWords('ground steel bar ', { material, how }, mm);
    expect(say('likely')).toBe(
      '"ground steel bar" is taken as mild steel: 11.7 millionths a degree (11.3 to 12.2).',
    );
    expect(say('table')).toBe('Mild steel: 11.7 millionths a degree (11.3 to 12.2).');
    expect(say('own')).toBe('Mild steel, your own: 11.7 millionths a degree (11.3 to 12.2).');
  });

  it('asks where nothing is known', () => {
    expect(materialMatchWords('', null, mm)).toBe('No material said. Choose what it is made of.');
    expect(materialMatchWords('unobtainium', null, mm)).toBe(
      'Nothing is known of "unobtainium". Choose what it is nearest to.',
    );
  });

  it('keeps the capitals of a name that has them', () => {
    const ptfe = { ...material, name: 'PTFE' };
    expect(materialMatchWords('ptfe bush', { material: ptfe, how: 'likely' }, mm)).toMatch(
      /taken as PTFE:/,
    );
  });

  it('says when there is one figure only', () => {
    const one = { ...material, lowNanoPerC: 11_700, highNanoPerC: 11_700 };
    expect(expansionRangeWords(one, mm)).toBe('one figure only');
    const whole = { ...one, lowNanoPerC: 10_000, highNanoPerC: 12_000 };
    expect(expansionRangeWords(whole, inch)).toBe('10,0 to 12,0');
  });
});
