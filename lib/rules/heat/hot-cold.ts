import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';
import { clearanceOverRange } from '@/lib/maths/thermal/clearance-over-range';
import { heatOnePiece } from '@/lib/maths/thermal/heat-one-piece';
import { temperatureForClearance } from '@/lib/maths/thermal/temperature-for-clearance';
import { tightestMoment } from '@/lib/maths/thermal/tightest-moment';
import { mmFromPm, pmFromMm } from '@/lib/units/picometres';
import type { HeatMaterial } from './starter-materials';

/** One side of a fit: its size at 20 degrees C and what it is made of. */
export type HotSide = { sizePm: number; material: HeatMaterial };

export type HotCold = {
  /** Both pieces at one temperature, coldest first; the ends and 20 degrees C are among them. */
  soaked: { temperatureC: number; clearancePm: number }[];
  /** The least clearance of that range. */
  tightestSoaked: { temperatureC: number; clearancePm: number };
  /** Outer and inner each at its own temperature. */
  bad: Moment;
  /** Which of the two is tighter; the bad moment where they are alike. */
  tight: 'soaked' | 'bad';
  /** The bad moment with the least and the most that the coefficients may make of it. */
  badBetween: { lowPm: number; highPm: number };
  /** What ten degrees more would do: to both pieces, and to the inner one alone at the bad moment. */
  tenMore: { bothPm: number; innerPm: number };
  /** How much hotter than the outer piece, at its bad moment, the inner may be before they touch, degrees C. */
  touchesHotterByC: number | null;
  /** The temperature of both at which they touch; null where none does, or only far beyond any use. */
  touchesSoakedC: number | null;
};

export type Moment = { outerC: number; innerC: number; clearancePm: number };

/** Where free expansion is still worth a word, degrees C. */
const farthest = { coldC: -100, hotC: 500 };

/**
 * The clearance of one pair hot and cold: soaked over a range, and at the moment when the inner piece is
 * hot and the outer still cold.
 *
 * Each side by its own material and temperature (ISO 1). Every figure is an estimate: free expansion, mean
 * coefficients, no load. `soaked` has steps of round figures.
 */
export function hotCold(asked: {
  bore: HotSide;
  shaft: HotSide;
  soakedC: { lowest: number; highest: number };
  badC: { outer: number; inner: number };
}): HotCold {
  const { soakedC, badC } = asked;
  const [bore, shaft] = [mating(asked.bore), mating(asked.shaft)];
  const temperaturesC = roundSteps(soakedC.lowest, soakedC.highest);
  const range = clearanceOverRange({ bore, shaft, temperaturesC });
  const at = (boreC: number, shaftC: number) =>
    clearanceAtTemperatures({ bore, boreC, shaft, shaftC }).clearanceMm;
  const alone = (temperatureC: number) => ({ lowestC: temperatureC, highestC: temperatureC });
  const worst = tightestMoment({
    bore,
    boreRange: alone(badC.outer),
    shaft,
    shaftRange: alone(badC.inner),
  });
  const badPm = pmFromMm(worst.clearanceMm);
  const tightestPm = pmFromMm(range.smallestMm);
  const hot = soakedC.highest;
  return {
    soaked: temperaturesC.map((temperatureC, index) => ({
      temperatureC,
      clearancePm: pmFromMm(range.clearancesMm[index]!),
    })),
    tightestSoaked: { temperatureC: range.smallestAtC, clearancePm: tightestPm },
    bad: { outerC: badC.outer, innerC: badC.inner, clearancePm: badPm },
    tight: tightestPm < badPm ? 'soaked' : 'bad',
    badBetween: between(asked),
    tenMore: {
      bothPm: pmFromMm(at(hot + 10, hot + 10) - at(hot, hot)),
      innerPm: pmFromMm(at(badC.outer, badC.inner + 10) - worst.clearanceMm),
    },
    touchesHotterByC: touchesHotterBy(asked),
    touchesSoakedC: touchesSoaked(asked),
  };
}

function mating({ sizePm, material }: HotSide, nano = material.expansionNanoPerC) {
  return { size20Mm: mmFromPm(sizePm), expansionPerC: nano * 1e-9 };
}

/** The bad moment at the four corners of both coefficients' ranges. */
function between({ bore, shaft, badC }: Parameters<typeof hotCold>[0]): HotCold['badBetween'] {
  const corners = [bore.material.lowNanoPerC, bore.material.highNanoPerC].flatMap((boreNano) =>
    [shaft.material.lowNanoPerC, shaft.material.highNanoPerC].map((shaftNano) =>
      pmFromMm(
        clearanceAtTemperatures({
          bore: mating(bore, boreNano),
          boreC: badC.outer,
          shaft: mating(shaft, shaftNano),
          shaftC: badC.inner,
        }).clearanceMm,
      ),
    ),
  );
  return { lowPm: Math.min(...corners), highPm: Math.max(...corners) };
}

function touchesHotterBy({ bore, shaft, badC }: Parameters<typeof hotCold>[0]): number | null {
  if (shaft.material.expansionNanoPerC <= 0) return null;
  const touch = heatOnePiece({
    change: 'shaft',
    bore: mating(bore),
    shaft: mating(shaft),
    gapMm: 0,
    otherC: badC.outer,
  });
  if (touch.kind !== 'found' || touch.temperatureC > farthest.hotC) return null;
  return touch.changeC > 0 ? touch.changeC : null;
}

function touchesSoaked({ bore, shaft }: Parameters<typeof hotCold>[0]): number | null {
  const touch = temperatureForClearance({
    bore: mating(bore),
    shaft: mating(shaft),
    clearanceMm: 0,
  });
  if (touch.kind !== 'found') return null;
  const { temperatureC } = touch;
  return temperatureC < farthest.coldC || temperatureC > farthest.hotC ? null : temperatureC;
}

/** The ends, round figures between them, and 20 where it lies between. */
function roundSteps(lowest: number, highest: number): number[] {
  const span = highest - lowest;
  const step = [1, 2, 5, 10, 20, 25, 50, 100, 200].find((one) => span / one <= 8) ?? 500;
  const found = new Set([lowest, highest]);
  for (let at = Math.ceil(lowest / step) * step; at < highest; at += step) found.add(at + 0);
  if (lowest < 20 && highest > 20) found.add(20);
  return [...found].sort((a, b) => a - b);
}
