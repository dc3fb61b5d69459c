import { describe, expect, it } from 'vitest';
import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import type { GaugeSends } from '@/lib/schema/gauge';
import { portSpoiltWords, portStateWords } from '@/lib/text/gauge-port-words';
import { lessonCameWords, lessonFaultWords, sendsWords } from '@/lib/text/gauge-sends-words';

const of = (over: Partial<GaugeSends>) => sendsWords('Mic 2', { ...untaughtGauge, ...over });

describe('the words of how a gauge sends', () => {
  it('say nothing of a gauge that was never taught', () => {
    expect(of({})).toBeNull();
  });

  it('are one sentence of end, mark and unit', () => {
    expect(of({ sendsEnd: 'enter', sendsMark: '.', sendsUnit: 'mm' })).toBe(
      'Mic 2 ends a reading with Enter, writes a decimal point and is always in mm.',
    );
    expect(of({ sendsEnd: 'tab', sendsMark: ',', sendsUnit: 'in' })).toBe(
      'Mic 2 ends a reading with Tab, writes a decimal comma and is always in inches.',
    );
    expect(of({ sendsEnd: 'comma', sendsMark: '.', sendsUnit: 'says' })).toBe(
      'Mic 2 ends a reading with a comma, writes a decimal point and says its unit itself.',
    );
    expect(of({ sendsEnd: 'space', sendsMark: null, sendsUnit: 'button' })).toBe(
      'Mic 2 ends a reading with a space, writes no decimals and follows its own mm and inch button, which is checked by size.',
    );
    expect(of({ sendsEnd: 'nothing', sendsMark: '.', sendsUnit: null })).toBe(
      'Mic 2 ends a reading with 150 ms of silence and writes a decimal point.',
    );
    expect(of({ sendsEnd: 'nothing', sendsPauseMs: 200 })).toContain('200 ms of silence');
  });

  it('say further what is passed over, and how a port is set', () => {
    const more = {
      sendsPlus: true,
      sendsPrefix: 'A',
      serialBaud: 4800,
      serialFrame: '7E2',
    } as const;
    expect(of({ sendsEnd: 'enter', sendsMark: '.', sendsUnit: 'mm', ...more })).toBe(
      'Mic 2 ends a reading with Enter, writes a decimal point and is always in mm. Its + before a size is no departure. The "A" in front is passed over. Its port: 4800 7E2.',
    );
  });

  it('count the three readings of a lesson', () => {
    expect(lessonCameWords(0)).toBe(
      'Measure three things you know roughly, and send each with the gauge\u2019s own button.',
    );
    expect(lessonCameWords(1)).toBe('1 of 3 came. Two more.');
    expect(lessonCameWords(2)).toBe('2 of 3 came. One more.');
  });

  it.each([
    ['no number', 'One of the three is no number.'],
    ['ends differ', 'they do not end alike'],
    ['marks differ', 'a decimal point in one, a comma in another'],
    ['comma twice', 'A comma stands in the figures and ends them too'],
    ['some name a unit', 'some say their unit, some do not'],
    ['fronts differ', 'something else stands in front of each'],
    ['not its range', 'Mic 2 cannot measure one of these, in mm or in inches.'],
    ['by hand', 'That came at the pace of a hand'],
  ] as const)('say of three that do not serve: %s', (code, says) => {
    const words = lessonFaultWords(code, 'Mic 2');
    expect(words).toContain(says);
    expect(words).toMatch(/\. Nothing was kept\.$/);
  });
});

describe('the words of a gauge\u2019s port', () => {
  it.each([
    ['opening', 'The port of Mic 2 is being opened.'],
    ['open', 'Mic 2 is connected.'],
    ['lost', 'Mic 2 was unplugged. Plug it in again; readings go on by themselves.'],
    ['not here', 'The port of Mic 2 is not here. Plug it in, or choose it.'],
    ['alike', 'Two ports look alike. Choose the one of Mic 2.'],
    [
      'in use',
      'The port of Mic 2 is in use by another page or program. Close that, then choose it again.',
    ],
    [
      'refused',
      'The port of Mic 2 cannot be opened as it is set. Teach it again on the Gauges sheet.',
    ],
  ] as const)('say where its line stands: %s', (state, says) => {
    expect(portStateWords(state, 'Mic 2')).toBe(says);
  });

  it.each([
    ['parity', 'A reading of Mic 2 came garbled.'],
    ['characters', 'A reading of Mic 2 came garbled.'],
    ['frame', 'The line of Mic 2 was broken while it sent.'],
    ['break', 'The line of Mic 2 was broken while it sent.'],
    ['overrun', 'Mic 2 sent faster than was taken.'],
    ['lost', 'The line of Mic 2 is gone.'],
    ['in use', 'The line of Mic 2 is gone.'],
    ['refused', 'The line of Mic 2 is gone.'],
  ] as const)('say that nothing was taken: %s', (by, says) => {
    expect(portSpoiltWords(by, 'Mic 2')).toContain(says);
    expect(portSpoiltWords(by, 'Mic 2')).toContain('Nothing was taken.');
  });
});
