import type { StripReading } from '@/lib/text/strip-facts';

export type StackedDot = {
  reading: StripReading;
  x: number;
  /** 0 stands on the band, 4 is the highest. */
  level: number;
};

export type Stack = {
  dots: StackedDot[];
  /** Over a stack of five, how many more stand there. */
  more: { x: number; count: number }[];
};

const levels = 5;

/**
 * Readings as dots: each on the lowest level where it touches no other, in the order they were taken.
 *
 * Equal readings so stack upward, five at most; the rest are counted over the stack. The last reading and
 * held ones are never among those only counted: they take the highest place of the stack. Cost: O(n x 5n).
 */
export function stackDots(
  readings: readonly StripReading[],
  xOf: (pm: number) => number,
  diameterPx: number,
): Stack {
  const dots: StackedDot[] = [];
  const more: { x: number; count: number }[] = [];
  for (const reading of readings) {
    const x = xOf(reading.valuePm);
    const touching = dots.filter((dot) => Math.abs(dot.x - x) < diameterPx);
    const level = freeLevel(touching);
    if (level !== undefined) {
      dots.push({ reading, x, level });
      continue;
    }
    if (isKept(reading)) takePlace(touching, reading, x);
    const counted = more.find((stack) => Math.abs(stack.x - x) < diameterPx);
    if (counted === undefined) more.push({ x, count: 1 });
    else counted.count += 1;
  }
  return { dots, more };
}

function freeLevel(touching: readonly StackedDot[]): number | undefined {
  const taken = new Set(touching.map(({ level }) => level));
  return Array.from({ length: levels }, (_, level) => level).find((level) => !taken.has(level));
}

function isKept({ state, last }: StripReading): boolean {
  return last === true || state === 'held';
}

function takePlace(touching: StackedDot[], reading: StripReading, x: number): void {
  const place = touching.filter((dot) => !isKept(dot.reading)).sort((a, b) => b.level - a.level)[0];
  if (place === undefined) return;
  place.reading = reading;
  place.x = x;
}
