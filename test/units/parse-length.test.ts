import * as fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseLength, type LengthSetting, type ParsedLength } from '@/lib/units/parse-length';

const metric = { decimal: '.', unit: 'mm' } as const;
const inches = { decimal: '.', unit: 'in' } as const;
const comma = { decimal: ',', unit: 'mm' } as const;

const pmOf = (text: string, setting: LengthSetting) => {
  const parsed = parseLength(text, setting);
  return parsed.kind === 'length' ? parsed.pm : parsed;
};

describe('parseLength', () => {
  it('keeps the system a length was typed in', () => {
    const systemOf = (text: string) => {
      const parsed = parseLength(text, metric);
      return parsed.kind === 'length' ? parsed.unit : parsed;
    };
    expect(systemOf('24.987')).toBe('mm');
    expect(systemOf('2 thou')).toBe('in');
    expect(systemOf('20 \u00b5in')).toBe('in');
    expect(systemOf('18 \u00b5m')).toBe('mm');
  });

  it('offers only the meanings that are whole picometres', () => {
    // 1/127 in is 200 000 000 pm; 1/127 mm is none. By hand: 25 400 000 000 / 127.
    const parsed = parseLength('1/127', metric);
    expect(parsed.kind === 'question' && parsed.meanings.map(({ pm }) => pm)).toEqual([
      200_000_000,
    ]);
  });

  it('never says minus zero', () => {
    expect(Object.is(pmOf('-0', { ...metric, nominalPm: 25e9 }), 0)).toBe(true);
  });

  it('reads thousands in several groups only when both marks are there', () => {
    expect(pmOf('1,234,567.5', metric)).toBe(1_234_567_500_000_000);
    expect(parseLength('1,234,567', metric)).toMatchObject({ kind: 'error', code: 'two-marks' });
    expect(parseLength('12,34.5', metric)).toMatchObject({ kind: 'error', code: 'two-marks' });
    expect(parseLength('1,23.5', metric)).toMatchObject({ kind: 'error', code: 'two-marks' });
  });

  it('asks about a sign only beyond half the nominal', () => {
    const nominalPm = 10_000_000_000;
    expect(parseLength('-5', { ...metric, nominalPm })).toMatchObject({ sizePm: 5_000_000_000 });
    expect(parseLength('+5.001', { ...metric, nominalPm })).toMatchObject({ code: 'sign-large' });
    expect(parseLength('-5.001', { ...metric, nominalPm })).toMatchObject({ code: 'sign-large' });
  });

  it('reads an improper fraction alone but not after a whole number', () => {
    expect(pmOf('9/8"', metric)).toBe(28_575_000_000);
    expect(parseLength('1 9/8"', metric)).toMatchObject({ kind: 'error', code: 'not-a-fraction' });
  });

  it.each([
    ['24.9\u00d87', 'unknown-unit', 4, '\u00d8'],
    ['24.987 kg', 'unknown-unit', 7, 'k'],
    ['24.987\u00b10.01', 'tolerance', 6, '\u00b1'],
    ['--0.02', 'two-signs', 1, '-'],
    ['24..987', 'two-marks', 2, '.'],
    ['abc', 'not-a-number', 0, 'a'],
    ['mm', 'no-number', 0, 'm'],
    ['1/0"', 'zero-below', 2, '0'],
    ['', 'empty', 0, ''],
    ['24 98', 'two-numbers', 3, '9'],
    ['0 987', 'two-numbers', 2, '9'],
    ['10000000', 'too-long', 0, '1'],
    ['.5.5', 'two-marks', 0, '.'],
    ['+-2', 'two-signs', 1, '-'],
    ['5 M', 'unknown-unit', 2, 'M'],
    ['5 mm 3', 'not-understood', 2, 'm'],
    ['\ud83d\ude00', 'not-a-number', 0, '\ud83d\ude00'],
  ])('names the character it cannot read in %j', (text, code, at, character) => {
    expect(parseLength(text, metric)).toEqual({ kind: 'error', code, at, character });
  });

  it('asks with the meaning that can be kept where the other is above nine kilometres', () => {
    // 400.5 in is 10.1727 m; 400 500 in would be 10 172.7 m, more than 2^53 pm.
    expect(parseLength('400,500', { decimal: '.', unit: 'in' })).toMatchObject({
      kind: 'question',
      code: 'mark-thousands',
      meanings: [{ pm: 10_172_700_000_000 }],
    });
  });

  it('asks about a space between digits, with thin and no-break spaces too', () => {
    for (const space of [' ', '\u00a0', '\u2009', '\u202f']) {
      const parsed = parseLength(`1${space}250.5`, metric);
      expect(parsed).toMatchObject({ code: 'space-thousands', meanings: [{ pm: 1250.5e9 }] });
    }
  });

  it('gives every whole number of picometres back from its decimal text, under both marks', () => {
    const lengths = fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER });
    fc.assert(
      fc.property(lengths, fc.integer({ min: 0, max: 9 }), (any, decimals) => {
        const pm = any - (any % 10 ** (9 - decimals));
        const digits = String(pm).padStart(10, '0');
        const whole = digits.slice(0, -9);
        const part = digits.slice(-9).slice(0, decimals);
        expect(pmOf(`${whole}${part && `.${part}`}`, metric)).toBe(pm);
        expect(pmOf(`${whole}${part && `,${part}`}`, comma)).toBe(pm);
      }),
    );
  });

  it('agrees with exact rational arithmetic on any decimal of inches', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 13n }),
        fc.integer({ min: 1, max: 12 }),
        (n, d) => {
          const text = String(n).padStart(d + 1, '0');
          const typed = `${text.slice(0, -d)}.${text.slice(-d)}`;
          const above = n * 25_400_000_000n;
          const below = 10n ** BigInt(d);
          const got = parseLength(typed, inches);
          if (above % below !== 0n) expect(got).toMatchObject({ code: 'finer-than-picometre' });
          else if (above / below > BigInt(Number.MAX_SAFE_INTEGER)) {
            expect(got).toMatchObject({ code: 'too-long' });
          } else expect(got).toMatchObject({ kind: 'length', pm: Number(above / below) });
        },
      ),
    );
  });

  it('reads a length and its negative as opposite departures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), (um) => {
        const text = (um / 1000).toFixed(3);
        const setting = { ...metric, nominalPm: 10e9 };
        const [up, down] = [pmOf(`+${text}`, setting), pmOf(`\u2212${text}`, setting)];
        expect((up as number) + (down as number)).toBe(0);
        expect(up).toBe(um * 1_000_000);
      }),
    );
  });

  it('answers any text at all without throwing', () => {
    const pieces = fc.array(fc.constantFrom(...'0123456789.,+-/ "mintuh\u00b5\u00bd\u2212\u00b1'), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(pieces, (characters) => {
        const parsed: ParsedLength = parseLength(characters.join(''), metric);
        expect(['length', 'question', 'error']).toContain(parsed.kind);
        if (parsed.kind === 'length') expect(Number.isSafeInteger(parsed.pm)).toBe(true);
        if (parsed.kind === 'question') expect(parsed.meanings.length).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });

  it('reads every line of the reference set as it says', () => {
    // test/reference/unit_parse.json: computed with exact rational numbers, twice.
    const file = join(import.meta.dirname, '../reference/unit_parse.json');
    const { cases } = JSON.parse(readFileSync(file, 'utf8')) as { cases: UnitCase[] };
    expect(cases.length).toBe(150);
    for (const { inputs, expected } of cases) {
      const { text, decimal, unit, nominal_mm: nominal } = inputs;
      const nominalPm = nominal === undefined ? {} : { nominalPm: nominal * 1e9 };
      const got = parseLength(text, { decimal, unit, ...nominalPm });
      const kind = 'error' in expected ? 'error' : 'ambiguous' in expected ? 'question' : 'length';
      expect([text, got.kind]).toEqual([text, kind]);
      if (got.kind === 'length') {
        expect([text, got.pm, got.resolutionPm]).toEqual([
          text,
          expected.pm,
          expected.resolution_pm,
        ]);
      }
    }
  });
});

type UnitCase = {
  inputs: { text: string; decimal: '.' | ','; unit: 'mm' | 'in'; nominal_mm?: number };
  expected: { pm?: number; resolution_pm?: number | null };
};
