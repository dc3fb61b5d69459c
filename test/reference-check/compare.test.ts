import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkFolder } from './check-folder';
import { compareCase, passes } from './compare';
import { halfUnit } from './tolerance';
import { topics } from './topics/index';

const folder = join(import.meta.dirname, '../reference');
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
type Loaded = { topic: string; tolerance?: unknown; cases: Record<string, unknown>[] };
const load = (file: string) => JSON.parse(readFileSync(join(folder, file), 'utf8')) as Loaded;

const states = (wanted: Parameters<typeof compareCase>[0], answer: Record<string, unknown>) =>
  compareCase(wanted, answer).map(({ at, state }) => `${at} ${state}`);

describe('compareCase', () => {
  it('adds abs and rel of the wanted size, and counts a missing one as nothing', () => {
    const rule = { kind: 'near', abs: 0.5, rel: 0.1, zeroAbs: 0 } as const;
    expect(passes(10, 11.5, rule)).toBe(true);
    expect(passes(10, 11.500001, rule)).toBe(false);
    expect(passes(-10, -11.5, rule)).toBe(true);
    expect(passes(10, 10.1, { kind: 'near', abs: 0, rel: 0, zeroAbs: 0 })).toBe(false);
  });

  it('never passes what is not a number where a number is wanted', () => {
    const rule = { kind: 'near', abs: Infinity, rel: 0, zeroAbs: 0 } as const;
    for (const got of [NaN, Infinity, null, '10', undefined])
      expect(passes(10, got, rule)).toBe(false);
  });

  it('asks for the very same whole number, and for tabulated sizes to the printed digits', () => {
    expect(passes(41, 41.00000000000001, { kind: 'exact' })).toBe(true);
    expect(passes(41, 41.4, { kind: 'exact' })).toBe(false);
    expect(passes(24_987_000_000, 24_987_000_001, { kind: 'exact' })).toBe(false);
    expect(passes(4.5, 4.54, { kind: 'exact' })).toBe(true);
    expect(passes(4.5, 4.56, { kind: 'exact' })).toBe(false);
    expect(passes(2.655, 2.65549, { kind: 'exact-to', step: 0.001 })).toBe(true);
    expect(passes(2.655, 2.6556, { kind: 'exact-to', step: 0.001 })).toBe(false);
  });

  it('knows half a unit of the last printed digit', () => {
    expect([12, 1.23, 0.5, 1e-7, 6.4e-7].map(halfUnit)).toEqual([0.5, 0.005, 0.05, 5e-8, 5e-9]);
    expect(passes(9.7, 9.66, { kind: 'half-unit' })).toBe(true);
    expect(passes(9.7, 9.64, { kind: 'half-unit' })).toBe(false);
  });

  it('tells a figure that nothing computes from one that is wrong', () => {
    const wanted = { expected: { a: 1, b: 2, c: null }, tolerance: { all: { rel: 1e-9 } } };
    expect(states(wanted, { a: 1, b: 3 })).toEqual([
      'expected.a passed',
      'expected.b failed',
      'expected.c not covered',
    ]);
  });

  it('asks for null where a figure is not defined', () => {
    expect(states({ expected: { c: null } }, { c: null })).toEqual(['expected.c passed']);
    expect(states({ expected: { c: null } }, { c: 0 })).toEqual(['expected.c failed']);
  });

  it('goes through lists item by item and minds their length', () => {
    const wanted = { expected: { x: [1, 2] }, tolerance: { abs: 0.1 } };
    expect(states(wanted, { x: [1, 2.2] })).toEqual(['expected.x.0 passed', 'expected.x.1 failed']);
    expect(states(wanted, { x: [1, 2, 3] })).toContain('expected.x.length failed');
    expect(states({ expected: { x: [] } }, { x: [4] })).toEqual(['expected.x.length failed']);
    expect(states({ expected: { x: [] } }, { x: [] })).toEqual(['expected.x.length passed']);
  });

  it('leaves the wording of a refusal free but not its presence', () => {
    const wanted = { expected: { error: 'empty' }, tolerance: 'exact for every case' };
    expect(states(wanted, { error: 'nothing typed' })).toEqual(['expected.error passed']);
    expect(states(wanted, { error: '' })).toEqual(['expected.error failed']);
    expect(states(wanted, { pm: 3 })).toEqual(['expected.error not covered']);
    const answer = { pm: 3, error: 'no' };
    expect(states({ expected: { pm: 3 } }, answer)).toContain('expected.error failed');
  });

  it('reads prefixes, suffixes and inner keys as the fields they name', () => {
    const tolerance = {
      abs_mm: 0.01,
      ratio_rel: 0.1,
      first_order: { abs_mm: 1 },
      'slope, intercept': 0.5,
      divisions: 'exact',
    };
    const expected = {
      left_mm: 1,
      ratio_mean: 1,
      first_order_mm: 1,
      intercept: 1,
      divisions: 3,
      angle_deg: 1.5,
    };
    const answer = {
      left_mm: 1.009,
      ratio_mean: 1.09,
      first_order_mm: 1.9,
      intercept: 1.4,
      divisions: 3.4,
      angle_deg: 1.509,
    };
    const failed = compareCase({ expected, tolerance }, answer).filter((f) => f.state === 'failed');
    // A length tolerance is none for an angle; the widest relative one of the case holds there.
    expect(failed.map(({ at }) => at)).toEqual(['expected.divisions']);
    const far = compareCase({ expected, tolerance }, { ...answer, angle_deg: 1.7 });
    expect(far.find(({ at }) => at === 'expected.angle_deg')?.state).toBe('failed');
  });

  it('holds a figure that no rule names to the digits it was rounded to, if it has nine or more', () => {
    // 288/19 = 15.157894736842; a figure of few digits is held to one part in 10^9.
    const tolerance = { abs_mm: 2e-6 };
    const wanted = { expected: { share_percent: [15.1578947, 12.5] }, tolerance };
    expect(states(wanted, { share_percent: [288 / 19, 12.5 + 1e-8] })).toEqual([
      'expected.share_percent.0 passed',
      'expected.share_percent.1 passed',
    ]);
    expect(states(wanted, { share_percent: [15.15789476, 12.5 + 2e-8] })).toEqual([
      'expected.share_percent.0 failed',
      'expected.share_percent.1 failed',
    ]);
  });

  it('gives others only what no name of their own claims', () => {
    const tolerance = {
      estimates: { rel: 1e-9 },
      others: { rel: 0.1 },
      note: 'zero standard deviations: absolute 1e-6; F null means infinite',
    };
    const wanted = { expected: { estimates: [1], sd_of_estimates: [2, 0] }, tolerance };
    expect(states(wanted, { estimates: [1.05], sd_of_estimates: [2.1, 1e-7] })).toEqual([
      'expected.estimates.0 failed',
      'expected.sd_of_estimates.0 passed',
      'expected.sd_of_estimates.1 passed',
    ]);
  });

  it('holds a published figure to its own tolerance, or to its printed digits', () => {
    const tolerance = { expected: { rel: 1e-9 }, published: { Cp: { abs: 0.1 } } };
    const wanted = {
      expected: { k: 1 },
      published: { Cp: 1.1, Cpk: 1.1, read_from: 'a' },
      tolerance,
    };
    expect(states(wanted, { k: 1, Cp: 1.19, Cpk: 1.19 })).toEqual([
      'expected.k passed',
      'published.Cp passed',
      'published.Cpk failed',
    ]);
  });

  it('reads the exceptions worded behind half a unit', () => {
    const words =
      'half a unit of the last printed digit, except uc2 1002 (rounded terms): abs 3; nu_eff abs 0.5';
    const wanted = {
      published: { uc2_nm2: 1002, nu_eff: 16.7, uc: 32 },
      tolerance: { published: { abs: words } },
    };
    expect(states(wanted, { uc2_nm2: 1004.9, nu_eff: 17.1, uc: 32.4 })).toEqual([
      'published.uc2_nm2 passed',
      'published.nu_eff passed',
      'published.uc passed',
    ]);
    expect(states(wanted, { uc2_nm2: 1005.1, nu_eff: 17.3, uc: 32.6 })).toEqual([
      'published.uc2_nm2 failed',
      'published.nu_eff failed',
      'published.uc failed',
    ]);
  });

  it('holds a run of a million draws to its own tolerance', () => {
    const tolerance = {
      analytic: { abs: 1e-9 },
      monte_carlo_1e6: { u: { abs: 0.01 }, endpoints: { abs: 0.02 } },
    };
    const wanted = { expected: { u: 2, coverage95_symmetric: [-3.9] }, tolerance };
    const run = { u: 2.009, coverage95_symmetric: [-3.915] };
    expect(states(wanted, { monte_carlo_1e6: run })).toEqual([
      'monte_carlo_1e6.u passed',
      'monte_carlo_1e6.coverage95_symmetric.0 passed',
    ]);
    expect(states(wanted, run)).toEqual([
      'expected.u failed',
      'expected.coverage95_symmetric.0 failed',
    ]);
    const wide = { u: 2.011, coverage95_symmetric: [-3.93] };
    expect(states(wanted, { monte_carlo_1e6: wide })).toEqual([
      'monte_carlo_1e6.u failed',
      'monte_carlo_1e6.coverage95_symmetric.0 failed',
    ]);
  });
});

describe('the reference sets', () => {
  it.each(files)('pass in %s when the wanted figures are handed back', (file) => {
    const { cases, tolerance } = load(file);
    for (const one of cases) {
      const answer = structuredClone(one.expected) as Record<string, unknown>;
      const figures = compareCase({ tolerance, ...one, published: undefined }, answer);
      expect(figures.filter(({ state }) => state !== 'passed')).toEqual([]);
      expect(figures.length).toBeGreaterThan(0);
    }
  });

  // A tenth and one unit off is outside every tolerance the sets state for `expected`.
  it.each(files)('fail in %s when every figure is off by a tenth and one', (file) => {
    const { cases, tolerance } = load(file);
    for (const one of cases) {
      const answer = shifted(one.expected) as Record<string, unknown>;
      const figures = compareCase({ tolerance, ...one, published: undefined }, answer);
      const numbers = figures.filter(
        ({ wanted, at }) => typeof wanted === 'number' && !at.endsWith('length'),
      );
      expect(numbers.filter(({ state }) => state === 'passed')).toEqual([]);
    }
  });
});

describe('checkFolder', () => {
  const written = (cases: unknown[]) => {
    const at = mkdtempSync(join(tmpdir(), 'reference-'));
    writeFileSync(join(at, 'a.json'), JSON.stringify({ topic: 'A', cases }));
    return at;
  };
  const statesIn = (
    at: string,
    answer: (inputs: Record<string, unknown>) => Record<string, unknown>,
  ) =>
    checkFolder(at, [{ topic: 'A', answer }]).flatMap(({ figures }) =>
      figures.map(({ figure }) => figure.state),
    );

  it('counts every figure of a case that throws as failed', () => {
    const at = written([{ id: 'one', inputs: {}, expected: { a: 1, b: 2 } }]);
    const refuse = () => {
      throw new Error('no');
    };
    expect(statesIn(at, refuse)).toEqual(['failed', 'failed']);
  });

  it('counts every figure of a topic nobody answers as not covered', () => {
    const at = written([{ id: 'one', inputs: {}, expected: { a: 1 } }]);
    const found = checkFolder(at, []).flatMap(({ figures }) => figures.map((f) => f.figure.state));
    expect(found).toEqual(['not covered']);
  });

  it('puts the data of another case in where a case points at it', () => {
    const at = written([
      { id: 'one', inputs: { data: [1, 2, 3] }, expected: {} },
      { id: 'two', inputs: { dataset: 'one', file: 'a.json' }, expected: { n: 3 } },
      { id: 'three', inputs: { case: 'one', more: 1 }, expected: { n: 3 } },
      { id: 'four', inputs: { dataset: 'one' }, expected: { n: 3 } },
    ]);
    const count = ({ x, data }: Record<string, unknown>) => ({
      n: ((x ?? data) as unknown[]).length,
    });
    expect(statesIn(at, count)).toEqual(['passed', 'passed', 'passed']);
  });

  it('answers other cases of the same shape as well', () => {
    const at = mkdtempSync(join(tmpdir(), 'reference-'));
    const { topic } = load('unit_parse.json');
    const inputs = { text: '7.31', decimal: '.', unit: 'mm' };
    const expected = { pm: 7_310_000_000, relative: false, resolution_pm: 10_000_000 };
    writeFileSync(
      join(at, 'other.json'),
      JSON.stringify({ topic, cases: [{ id: 'z', inputs, expected }] }),
    );
    const [report] = checkFolder(at, topics);
    expect(report?.figures.map(({ figure }) => figure.state)).toEqual([
      'passed',
      'passed',
      'passed',
    ]);
  });
});

function shifted(value: unknown): unknown {
  if (typeof value === 'number')
    return value + Math.sign(value || 1) * (Math.abs(value) / 10 + 1.1);
  if (Array.isArray(value)) return value.map(shifted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shifted(inner)]));
}
