import { describe, expect, it } from 'vitest';
import { sizeFromBench, tenWarmerAtBench } from '@/lib/rules/heat/bench-sizes';
import { hotCold } from '@/lib/rules/heat/hot-cold';
import { materialOf, materialsKnown } from '@/lib/rules/heat/material-of';
import { starterMaterials } from '@/lib/rules/heat/starter-materials';
import type { Material } from '@/lib/schema/material';
import { smallJob } from '../small-job';

const um = 1_000_000;
const mm = 1_000_000_000;
const material = (name: string, middle: number, low = middle, high = middle) => ({
  key: name,
  name,
  expansionNanoPerC: middle,
  lowNanoPerC: low,
  highNanoPerC: high,
  over: '',
  source: '',
});

describe('hotCold', () => {
  // 60 mm, both of 11.5e-6, 0.045 clear at 20: the worked case beside clearanceAtTemperatures. The bad moment,
  // bore at 20 and shaft at 85: 0.045 - 59.955 x 11.5e-6 x 65 = 0.00018.
  const alike = {
    bore: { sizePm: 60 * mm, material: material('steel', 11_500) },
    shaft: { sizePm: 60 * mm - 45 * um, material: material('steel', 11_500) },
    soakedC: { lowest: -20, highest: 120 },
    badC: { outer: 20, inner: 85 },
  };

  it('finds the bad moment, though soaked the clearance hardly moves', () => {
    const found = hotCold(alike);
    expect(found.bad).toEqual({
      outerC: 20,
      innerC: 85,
      clearancePm: expect.any(Number) as number,
    });
    expect(found.bad.clearancePm / um).toBeCloseTo(0.1836, 3);
    expect(found.tight).toBe('bad');
    expect(found.tightestSoaked.temperatureC).toBe(-20);
    expect(found.tightestSoaked.clearancePm / um).toBeCloseTo(45 * (1 - 40 * 11.5e-6), 6);
  });

  it('says what ten degrees more would do, by hand', () => {
    const { tenMore } = hotCold(alike);
    // Inner alone: 59.955 mm x 11.5e-6 x 10 = 6.8948 um; both: 0.045 mm x 11.5e-6 x 10.
    expect(tenMore.innerPm / um).toBeCloseTo(-6.8948, 3);
    expect(tenMore.bothPm / um).toBeCloseTo(0.005175, 6);
  });

  it('says how much hotter the inner may be until they touch', () => {
    // 0.045 / (59.955 x 11.5e-6) = 65.27 degrees.
    expect(hotCold(alike).touchesHotterByC).toBeCloseTo(65.27, 2);
    expect(hotCold(alike).touchesSoakedC).toBeNull();
    const tight = { ...alike, shaft: { ...alike.shaft, sizePm: 60 * mm + um } };
    expect(hotCold(tight).touchesHotterByC).toBeNull();
  });

  it('finds an aluminium housing tightest in frost, and where it binds', () => {
    // 25.01 of 23.1e-6 on 24.99 of 11.5e-6: binds at -48.88 (worked case beside temperatureForClearance).
    const found = hotCold({
      bore: { sizePm: 25_010_000_000, material: material('aluminium', 23_100) },
      shaft: { sizePm: 24_990_000_000, material: material('steel', 11_500) },
      soakedC: { lowest: -40, highest: 60 },
      badC: { outer: 20, inner: 20 },
    });
    expect(found.tight).toBe('soaked');
    expect(found.tightestSoaked.temperatureC).toBe(-40);
    expect(found.touchesSoakedC).toBeCloseTo(-48.88, 2);
  });

  it('has both ends, round figures and 20 degrees among its steps, in order', () => {
    const steps = (lowest: number, highest: number) =>
      hotCold({ ...alike, soakedC: { lowest, highest } }).soaked.map((p) => p.temperatureC);
    expect(steps(-7, 63)).toEqual([-7, 0, 10, 20, 30, 40, 50, 60, 63]);
    expect(steps(15, 15)).toEqual([15]);
    expect(steps(0, 300)).toEqual([0, 20, 50, 100, 150, 200, 250, 300]);
  });

  it('spreads the bad moment over the ranges of both coefficients', () => {
    const found = hotCold({
      ...alike,
      bore: { ...alike.bore, material: material('a', 11_500, 11_000, 12_000) },
      shaft: { ...alike.shaft, material: material('b', 11_500, 11_300, 12_200) },
    });
    // The bore stands at 20, so only the shaft's range tells: 59.955 x 65 x (11.3 or 12.2)e-6.
    expect(found.badBetween.lowPm / um).toBeCloseTo(45 - 59.955 * 65 * 12.2e-3, 3);
    expect(found.badBetween.highPm / um).toBeCloseTo(45 - 59.955 * 65 * 11.3e-3, 3);
  });
});

const own = (name: string, over: Partial<Material> = {}): Material => ({
  id: `own ${name}`,
  version: 1,
  createdAt: '2026-11-25T10:00:00Z',
  struckAt: null,
  name,
  expansionNanoPerC: 16_700,
  lowNanoPerC: 16_500,
  highNanoPerC: 17_000,
  source: 'the mill',
  ...over,
});

describe('materialOf', () => {
  it.each([
    ['Mild steel', 'mild steel', 'table'],
    ['  EN8 ', 'mild steel', 'table'],
    ['steel', 'mild steel', 'likely'],
    ['ground steel bar', 'mild steel', 'likely'],
    ['graphite iron', 'grey iron', 'table'],
    ['cast iron, fine', 'grey iron', 'likely'],
    ['stainless steel', 'stainless 304', 'table'],
    ['stainless steel bar', 'stainless 304', 'likely'],
    ['416 stainless', 'stainless 304', 'likely'],
    ['bronze', 'bronze', 'table'],
    ['aluminium bronze rod', 'aluminium bronze', 'likely'],
    ['LM25', 'aluminium cast', 'table'],
  ])('takes "%s" for %s (%s)', (text, key, how) => {
    const found = materialOf(text, []);
    expect([found?.material.key, found?.how]).toEqual([key, how]);
  });

  it.each(['', '  ', 'unobtainium', 'steelwork', 'ironwood'])('knows nothing of "%s"', (text) => {
    expect(materialOf(text, [])).toBeNull();
  });

  it("takes the shop's own before the table, unless it is struck out", () => {
    expect(materialOf('bronze', [own('Bronze')])).toMatchObject({ how: 'own' });
    const struck = own('Bronze', { struckAt: '2026-11-25T11:00:00Z' });
    expect(materialOf('bronze', [struck])).toMatchObject({ how: 'table' });
  });
});

describe('the table of materials', () => {
  it('has a source for each, its figure within its range, and no name twice', () => {
    const names = starterMaterials.flatMap(({ name, names: more }) => [
      name.toLowerCase(),
      ...more,
    ]);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    for (const one of starterMaterials) {
      expect(one.source.length).toBeGreaterThan(8);
      expect(one.lowNanoPerC).toBeLessThanOrEqual(one.expansionNanoPerC);
      expect(one.highNanoPerC).toBeGreaterThanOrEqual(one.expansionNanoPerC);
    }
  });

  it("lists the shop's own first and in place of one of the same name", () => {
    const known = materialsKnown([own('Bearing bronze'), own('Colsibro')]);
    expect(known.slice(0, 2).map(({ name }) => name)).toEqual(['Bearing bronze', 'Colsibro']);
    expect(known.filter(({ name }) => name === 'Bearing bronze')).toHaveLength(1);
    expect(known).toHaveLength(starterMaterials.length + 1);
  });
});

describe('sizes at the bench', () => {
  const cell = (view: ReturnType<typeof smallJob>) => {
    const fit = view.fits[0]!;
    return view.cell(fit.internals[0]!.piece.id, fit.internalFeature.id);
  };
  const steel = material('steel', 11_500);

  it('brings a size to 20 degrees C where every reading says how warm the piece was', () => {
    const view = smallJob({ bores: [[10, 10, 10, 10, 10, 10]] });
    const readings = view.sheet.readings.map((one) => ({ ...one, temperatureMilliC: 30_000 }));
    // 18.010 x 11.5e-6 x 10 / (1 + 11.5e-6 x 10) = 2.0709 um smaller.
    const found = sizeFromBench(cell(view), 18_010_000_000, steel, readings)!;
    expect(found.temperatureC).toBe(30);
    expect(found.offPm / um).toBeCloseTo(-2.0709, 3);
    expect(found.sizePm).toBe(18_010_000_000 + found.offPm);
  });

  it('leaves a size as it was read where one reading does not say', () => {
    const view = smallJob({ bores: [[10, 10]] });
    const one = view.sheet.readings.map((reading, i) => ({
      ...reading,
      temperatureMilliC: i === 0 ? 30_000 : null,
    }));
    expect(sizeFromBench(cell(view), 18_010_000_000, steel, one)).toBeNull();
    expect(sizeFromBench(cell(view), 18_010_000_000, steel, view.sheet.readings)).toBeNull();
  });

  it('says what ten degrees at the bench would do to the clearance', () => {
    const bore = { sizePm: 60 * mm, material: material('aluminium', 23_600) };
    const shaft = { sizePm: 60 * mm, material: steel };
    // 60 x (11.5 - 23.6)e-6 x 10 = -7.26 um, less a little of the second order.
    expect(tenWarmerAtBench({ bore, shaft }) / um).toBeCloseTo(-7.26, 2);
  });
});
