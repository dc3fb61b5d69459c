import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cutSteps } from '@/lib/rules/cuts/cut-steps';
import { learnedCuts } from '@/lib/rules/cuts/learned-cuts';
import { askedFrom } from '@/lib/rules/cuts/slide';
import { nextCut } from '@/lib/maths/fit/next-cut';
import { standing, type Standing } from '@/lib/rules/standing';
import type { Cut } from '@/lib/schema/fit';
import { readingOf } from '../make';
import { aCut } from './a-cut';

// test/reference/cut_log.json: constructed logs, computed in exact fractions.
type Case = {
  id: string;
  inputs: {
    kind?: string;
    feature: 'external' | 'internal';
    target_mm: number;
    start_mm: number;
    dial: 'radius' | 'diameter';
    division_mm: number;
    cuts: [number | 'spring', number][];
  };
  expected: {
    cuts: { asked_mm: number | null; got_mm: number; ratio: number | null }[];
    left_mm: number;
    ratio_mean?: number;
    ratios_used?: number;
    ratio_sd?: number;
    ratio_upper_95_one_sided?: number;
    divisions?: number;
  };
};
const cases = (
  JSON.parse(readFileSync('test/reference/cut_log.json', 'utf8')) as { cases: Case[] }
).cases.filter(({ inputs }) => inputs.kind === undefined && Array.isArray(inputs.cuts));
const pm = (mm: number) => Math.round(mm * 1e9);

/** The log of a case as readings and cuts of the notebook, one reading before each cut and one after the last. */
function logOf({ inputs }: Case, change: (cut: Cut, index: number) => Cut = (cut) => cut) {
  const slide = { dial: inputs.dial, divisionPm: pm(inputs.division_mm), fineFeed: 1 };
  const sizes = [inputs.start_mm, ...inputs.cuts.map(([, size]) => size)];
  const readings = standing(
    sizes.map((size, i) => readingOf(i + 1, { valuePm: pm(size) })),
    [],
  );
  const cuts = inputs.cuts.map(([dial], i) =>
    change(
      aCut(i + 1, {
        lastReadingId: `reading ${i + 1}`,
        spring: dial === 'spring',
        askedPm: dial === 'spring' ? 0 : askedFrom(pm(dial), slide),
        ...slide,
      }),
      i,
    ),
  );
  const steps = cutSteps({
    cell: { earlier: readings.slice(0, -1), readings: readings.slice(-1) },
    cuts,
    pieceId: 'piece',
    featureId: 'feature',
    side: inputs.feature,
    seqOf: (id) => readings.find((reading) => reading.id === id)?.seq,
    sizeOf: (list: readonly Standing[]) => list.at(-1)?.valuePm ?? null,
  });
  return { slide, steps };
}

describe('learnedCuts', () => {
  it.each(cases.map((one) => [one.id, one] as const))(
    'learns of %s what the reference set says, through readings and cuts as they are kept',
    (_, one) => {
      const { slide, steps } = logOf(one);
      const { learned, log } = learnedCuts(steps, one.inputs.feature, slide, false);
      const { expected } = one;
      steps.forEach(({ askedPm, gotPm, ratio }, i) => {
        const wanted = expected.cuts[i]!;
        expect([askedPm, gotPm]).toEqual([
          wanted.asked_mm === null ? null : pm(wanted.asked_mm),
          pm(wanted.got_mm),
        ]);
        if (wanted.ratio === null) expect(ratio).toBeNull();
        else expect(ratio).toBeCloseTo(wanted.ratio, 7);
      });
      expect(learned.kind === 'nothing' ? undefined : learned.used).toBe(expected.ratios_used);
      if (learned.kind === 'nothing') return;
      expect(learned.mean).toBeCloseTo(expected.ratio_mean!, 7);
      if (learned.kind === 'spread') {
        expect(learned.sd).toBeCloseTo(expected.ratio_sd!, 7);
        expect(learned.upper).toBeCloseTo(expected.ratio_upper_95_one_sided!, 6);
      }
      const next = nextCut(log!, pm(one.inputs.target_mm));
      expect(next.leftPm).toBe(pm(expected.left_mm));
      if (expected.divisions !== undefined) {
        expect(next).toMatchObject({ kind: 'cut', divisions: expected.divisions });
      }
    },
  );

  const three = cases.find(({ id }) => id === 'ct-1')!;
  const learnedOf = (change: (cut: Cut, index: number) => Cut, changed = false) => {
    const { slide, steps } = logOf(three, change);
    return learnedCuts(steps, 'external', slide, changed);
  };

  it('learns only from the cuts since something was changed', () => {
    const afresh = learnedOf((cut, i) => (i === 1 ? { ...cut, changed: 'insert' } : cut));
    expect(afresh.steps.map(({ number }) => number)).toEqual([2, 3]);
    expect(learnedOf((cut) => cut, true).learned).toEqual({ kind: 'nothing' });
  });

  it('learns nothing for another slide than the last cut was put on with', () => {
    const { slide, steps } = logOf(three);
    const other = learnedCuts(steps, 'external', { ...slide, divisionPm: 25_000_000 }, false);
    expect(other.learned).toEqual({ kind: 'nothing' });
    const since = logOf(three, (cut, i) => (i < 2 ? cut : { ...cut, divisionPm: 25_000_000 }));
    const on = { ...slide, divisionPm: 25_000_000 };
    const last = learnedCuts(since.steps, 'external', on, false);
    expect(last.steps.map(({ number }) => number)).toEqual([3]);
    const unsaid = logOf(three, (cut) => ({
      ...cut,
      dial: null,
      divisionPm: null,
      fineFeed: null,
    }));
    expect(learnedCuts(unsaid.steps, 'external', slide, false).learned).toMatchObject({ used: 3 });
  });

  it('learns nothing for another machine of the same dial, whatever was done since that says none', () => {
    const { slide, steps } = logOf(three, (cut, i) =>
      i < 2 ? { ...cut, tool: 'A' } : { ...cut, dial: null, askedPm: 0 },
    );
    const on = (tool: object) =>
      learnedCuts(steps, 'external', { ...slide, ...tool }, false).learned;
    expect(on({ tool: 'A' })).toMatchObject({ used: 2 });
    expect([on({ tool: 'B' }), on({})]).toEqual([{ kind: 'nothing' }, { kind: 'nothing' }]);
  });

  it('learns nothing from a cut nobody said the asking of, and still knows the size after it', () => {
    const said = learnedOf((cut, i) => (i === 2 ? { ...cut, askedPm: 0 } : cut));
    expect(said.learned).toMatchObject({ kind: 'spread', used: 2, mean: 0.92 });
    expect(nextCut(said.log!, 24_960_000_000).leftPm).toBe(151_000_000);
  });

  it('counts spring passes apart, with what they took on the mean', () => {
    const { slide, steps } = logOf(cases.find(({ id }) => id === 'ct-3')!);
    const { springs, springPm, learned } = learnedCuts(steps, 'internal', slide, false);
    expect([springs, springPm]).toEqual([1, 11_000_000]);
    expect(learned).toMatchObject({ used: 3 });
  });
});
