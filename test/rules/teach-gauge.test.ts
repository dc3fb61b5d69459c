import { describe, expect, it } from 'vitest';
import { serialFrame } from '@/lib/rules/serial-frame';
import { serialText } from '@/lib/rules/serial-text';
import { lessonPauseMs, teachGauge, type Arrival } from '@/lib/rules/teach-gauge';
import { mm, um } from './make';

// What gauges send, by keys and by wire: design/capture.md 1.1 (an open-hardware adapter's README) and 1.2
// (several meter manuals on manualshive and easymanua.ls; a balance manual, easymanua.ls p. 63).

const mic = { unit: 'mm', resolutionPm: um, rangeLowPm: 0, rangeHighPm: 25 * mm } as const;
const caliper = { ...mic, resolutionPm: 10 * um, rangeHighPm: 150 * mm };

/** Each message at `gapMs` a character, five seconds apart. */
const sent = (messages: readonly string[], gapMs = 20): Arrival[] =>
  messages.flatMap((message, n) =>
    [...message].map((character, k) => ({ character, atMs: 5000 * n + gapMs * k })),
  );
const later = 20_000;
const lesson = (messages: readonly string[], gauge: Parameters<typeof teachGauge>[1] = mic) =>
  teachGauge(sent(messages), gauge, later);
const understood = (messages: readonly string[], gauge?: Parameters<typeof teachGauge>[1]) => {
  const found = lesson(messages, gauge);
  if (found.kind !== 'understood') throw new Error(JSON.stringify(found));
  return found;
};

describe('teachGauge', () => {
  it.each([
    ['Enter', '\r', 'enter'],
    ['CR and LF', '\r\n', 'enter'],
    ['Tab', '\t', 'tab'],
    ['a comma', ',', 'comma'],
    ['a space', ' ', 'space'],
    ['nothing', '', 'nothing'],
  ])('finds that a message ends with %s', (_, end, sendsEnd) => {
    const { sends, readings } = understood([`18.003${end}`, `6.25${end}`, `0.500${end}`]);
    expect(sends).toMatchObject({ sendsEnd, sendsMark: '.', sendsUnit: 'mm', sendsPlaces: 2 });
    expect(readings.map(({ valuePm }) => valuePm)).toEqual([18_003 * um, 6.25 * mm, 0.5 * mm]);
  });

  it('finds the decimal mark, for a gauge writes no thousands', () => {
    expect(understood(['18,003\r', '6,250\r', '0,500\r']).sends.sendsMark).toBe(',');
    expect(understood(['18,003\r', '6,250\r', '0,500\r']).readings[1]!.valuePm).toBe(6.25 * mm);
    expect(understood(['18\r', '6\r', '5\r']).sends).toMatchObject({
      sendsMark: null,
      sendsPlaces: 0,
    });
  });

  it('finds the unit: written, the only one possible, or as a button stands', () => {
    expect(understood(['18.003 mm\r', '6.250mm\r', '0.7088 in\r']).sends.sendsUnit).toBe('says');
    // Finer than the gauge reads in millimetres: it is inches.
    const inches = understood(['0.7088\r', '0.2500\r', '0.0195\r']);
    expect(inches.sends.sendsUnit).toBe('in');
    expect(inches.readings.map(({ valuePm }) => valuePm)).toEqual([
      18_003_520_000, // 0.7088 in of 25.4 mm
      6_350 * um,
      495_300_000,
    ]);
    const both = understood(['18.003\r', '18.004\r', '0.7088\r']);
    expect(both.sends.sendsUnit).toBe('button');
    expect(both.readings.map(({ unit }) => unit)).toEqual(['mm', 'mm', 'in']);
    // With a half digit in inches.
    expect(understood(['18.00\r', '0.7085\r', '0.709\r'], caliper).sends.sendsUnit).toBe('button');
  });

  it('finds a plus that stands before every size, and what is written in front', () => {
    expect(understood(['+18.003\r', '-0.012\r', '+0.500\r']).sends.sendsPlus).toBe(true);
    expect(understood(['18.003\r', '-0.012\r', '0.500\r']).sends.sendsPlus).toBe(false);
    expect(understood(['A+18.003\r', 'A+0.012\r', 'A-0.500\r']).sends).toMatchObject({
      sendsPrefix: 'A',
      sendsPlus: true,
    });
    expect(understood(['  18.003\r', '   6.250\r', '0018.004\r']).sends.sendsPrefix).toBeNull();
  });

  it('waits longer than the slowest key of a gauge that ends with nothing', () => {
    const at = (gapMs: number) =>
      teachGauge(sent(['18.003', '18.004', '18.005'], gapMs), mic, later);
    expect(at(5)).toMatchObject({ sends: { sendsPauseMs: 150 } });
    expect(at(100)).toMatchObject({ sends: { sendsPauseMs: 150 } });
    expect(at(120)).toMatchObject({ sends: { sendsPauseMs: 200 } });
    expect(at(300)).toMatchObject({ sends: { sendsPauseMs: 450 } });
    expect(at(340)).toMatchObject({ kind: 'fault', code: 'by hand' });
    expect(understood(['18.003\r', '6.25\r', '0.5\r']).sends.sendsPauseMs).toBeNull();
  });

  it('waits for three, and for the end of the third', () => {
    expect(teachGauge([], mic, 0)).toEqual({ kind: 'waiting', came: 0 });
    expect(lesson(['18.003\r'])).toEqual({ kind: 'waiting', came: 1 });
    const three = sent(['18.003', '18.004', '18.005']);
    const lastAtMs = three.at(-1)!.atMs;
    expect(teachGauge(three, mic, lastAtMs + lessonPauseMs - 1)).toEqual({
      kind: 'waiting',
      came: 2,
    });
    expect(teachGauge(three, mic, lastAtMs + lessonPauseMs).kind).toBe('understood');
    // Enter alone is no reading.
    expect(lesson(['\r', '\r', '18.003\r'])).toEqual({ kind: 'waiting', came: 1 });
  });

  it.each([
    ['ends differ', ['18.003\r', '18.004\t', '18.005\r']],
    ['ends differ', ['18.003\r', '18.004', '18.005\r']],
    ['marks differ', ['18.003\r', '18,004\r', '18.005\r']],
    ['comma twice', ['18,003,', '18,004,', '18,005,']],
    ['some name a unit', ['18.003 mm\r', '18.004\r', '18.005 mm\r']],
    ['fronts differ', ['A18.003\r', 'B18.004\r', 'A18.005\r']],
    ['not its range', ['31.4\r', '18.004\r', '18.005\r']],
    ['not its range', ['0.000001\r', '18.004\r', '18.005\r']],
    ['no number', ['18..3\r', '18.004\r', '18.005\r']],
    ['no number', ['-\r', '18.004\r', '18.005\r']],
    ['no number', ['18.003 thou\r', '18.004\r', '18.005\r']],
  ])('says that the three do not agree: %s in %j', (code, messages) => {
    expect(lesson(messages)).toMatchObject({ kind: 'fault', code });
  });

  it('gives the three as they came, where they do not agree', () => {
    expect(lesson(['18.003\r', '18,004\r', '18.005\r'])).toMatchObject({
      texts: ['18.003', '18,004', '18.005'],
    });
  });

  it('learns from the lines of a serial gauge as from keys', () => {
    expect(understood(['+  18.003 mm\r\n', '+   6.250 mm\r\n', '-   0.012 mm\r\n'])).toMatchObject({
      sends: { sendsEnd: 'enter', sendsMark: '.', sendsUnit: 'says', sendsPlus: true },
      readings: [{ valuePm: 18_003 * um }, { valuePm: 6.25 * mm }, { valuePm: -12 * um }],
    });
    const fixed = ['\u000203000180030\r', '\u000203000062500\r', '\u000213000000120\r'];
    expect(understood(fixed)).toMatchObject({
      sends: { sendsMark: '.', sendsUnit: 'mm', sendsPlaces: 3, sendsPrefix: null },
      readings: [{ valuePm: 18_003 * um }, { valuePm: 6.25 * mm }, { valuePm: -12 * um }],
    });
  });
});

describe('the text of a serial message', () => {
  it('is read from its fixed places: polarity, decimals, eight figures', () => {
    expect(serialFrame('\u000203000180030')).toBe('18.003');
    expect(serialFrame('\u00021300018003MM')).toBe('-18.003');
    expect(serialFrame('\u00020400007088')).toBe('0.7088');
    expect(serialFrame('\u00020000000000')).toBe('0');
    expect(serialFrame('\u00020800000001')).toBe('0.00000001');
  });

  it('is no fixed message with a figure more or less, or another polarity', () => {
    for (const odd of [
      '\u00020300018',
      '\u000223000180030',
      '\u00020900018003',
      '03000180030',
      '\u0002030001800377777',
    ]) {
      expect(serialFrame(odd)).toBeNull();
    }
  });

  it('is without what stands around it, and its sign stands at its figures', () => {
    expect(serialText('   18.003 mm ')).toBe('18.003 mm');
    expect(serialText('+   18.003 mm')).toBe('+18.003 mm');
    expect(serialText('-  .7088')).toBe('-.7088');
    expect(serialText('\u000218.003\u0003')).toBe('18.003');
    expect(serialText('   ')).toBe('');
    expect(serialText('18.003 18.004')).toBe('18.003 18.004');
  });
});
