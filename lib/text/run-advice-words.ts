import { chartStepPm } from './chart-step';
import { countWord } from './drift-words';
import { offsetAmount } from './offset-amount';
import { ordinalWord } from './ordinal-word';
import { shownLength, type Shown } from './shown-size';

/** A steady run that is not clear of a limit. */
export function steadyWords(side: 'top' | 'bottom'): {
  title: string;
  says: string;
  summary: string;
} {
  return {
    summary: `steady, but too near the ${side}`,
    title: `Steady, but too near the ${side}`,
    says: `It does not drift, and its scatter reaches over the ${side === 'top' ? 'upper' : 'lower'} limit. Move it to the middle, once:`,
  };
}

/** The last piece against the line: noise is to be left alone. */
export function lastPieceWords(
  { mark, offPm, within }: { mark: string; offPm: number; within: boolean },
  shown: Shown,
): string {
  const off = shownLength(Math.abs(offPm), chartStepPm[shown.unit], shown);
  const where =
    Number(off.replace(',', '.')) === 0
      ? `${mark} is on the line of the others`
      : `${mark} is ${off} ${offPm < 0 ? 'below' : 'above'} the line of the others`;
  return within
    ? `${where}: within the noise. Leave the machine alone for it.`
    : `${where}: more than the noise. Measure it again before anything is moved.`;
}

/** When to measure next, and why then; `each` is what moves along the axis. */
export function nextMeasureWords(facts: {
  place: { mark: string };
  every: number;
  because: 'few' | 'drift' | 'events' | 'steady' | 'unknown';
  each: 'piece' | 'turn';
}): string {
  const { place, every, because, each } = facts;
  const next = `Measure ${place.mark} next`;
  const gap = every === 1 ? `each ${each}` : `every ${ordinalWord(every)} ${each}`;
  switch (because) {
    case 'few':
      return `${next}, and each ${each} until there is a line.`;
    case 'drift':
      return every === 1
        ? `${next}, and each ${each} up to there.`
        : `${next}: ${gap}, six times before it meets the limit.`;
    case 'events':
      return `${next}: ${gap}, six times between one adjustment and the next.`;
    case 'steady':
      return `${next}: ${gap}, a sixth of what has kept by itself so far.`;
    case 'unknown':
      return `${next}, and each ${each} until it has kept for twelve by itself.`;
  }
}

/** An offset followed to its effect. Lengths in pm. */
export function offsetEffectWords(
  facts: {
    askedPm: number;
    mark: string;
    expectedPm: number;
    halfPm: number;
    got: { valuePm: number; movedPm: number; asExpected: boolean } | null;
  },
  shown: Shown,
): { title: string; says: string; decide: boolean } {
  const { askedPm, mark, expectedPm, halfPm, got } = facts;
  const figure = (pm: number) => shownLength(pm, chartStepPm[shown.unit], shown);
  const signed = (pm: number) => shownLength(pm, chartStepPm[shown.unit], shown, 'always');
  const asked = offsetAmount(askedPm, shown);
  const stepUp = (pm: number) => Math.ceil(pm / chartStepPm[shown.unit]) * chartStepPm[shown.unit];
  const between = `${figure(expectedPm - stepUp(halfPm))} to ${figure(expectedPm + stepUp(halfPm))}`;
  if (got === null) {
    return {
      title: `Offset ${asked}`,
      says: `${mark} should come out near ${figure(expectedPm)} (${between}): an estimate by the line before.`,
      decide: false,
    };
  }
  if (got.asExpected) {
    return {
      title: 'The offset took',
      says: `${asked} was put in, and ${mark} came out at ${figure(got.valuePm)}, where ${figure(expectedPm)} was expected.`,
      decide: false,
    };
  }
  return {
    title: 'The offset did not come out',
    says: `${asked} was put in and it moved ${signed(got.movedPm)}: ${mark} is ${figure(got.valuePm)}, where ${between} was expected. ${likely(askedPm, got.movedPm, halfPm)}`,
    decide: true,
  };
}

function likely(askedPm: number, movedPm: number, halfPm: number): string {
  const near = (pm: number) => Math.abs(movedPm - pm) <= halfPm;
  if (near(-askedPm)) return 'It went the other way: was the sign turned round?';
  if (near(askedPm / 2))
    return 'It is half: was it put in on the diameter where the dial counts the radius?';
  if (near(2 * askedPm))
    return 'It is double: was it put in on the radius where the dial counts the diameter?';
  if (near(0)) return 'It did not move: was it put in at all?';
  return 'Measure it again; then look for play in the slide.';
}

/** "two", "12": how many are taken at a time, for a label. */
export function togetherWords(count: number, of: 'pieces' | 'readings'): string {
  if (count === 1) return 'one at a time';
  return of === 'pieces'
    ? `${countWord(count)} pieces at a time`
    : `${countWord(count)} readings of a piece`;
}
