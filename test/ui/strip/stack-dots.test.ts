import { describe, expect, it } from 'vitest';
import { stackDots } from '@/app/ui/strip/stack-dots';
import type { StripReading } from '@/lib/text/strip-facts';

const xOf = (pm: number) => pm;
const counted = (...values: number[]): StripReading[] =>
  values.map((valuePm) => ({ valuePm, state: 'counted' }));
const levelsOf = (readings: StripReading[]) =>
  stackDots(readings, xOf, 8).dots.map(({ x, level }) => [x, level]);

describe('stackDots', () => {
  it('stacks equal readings upward in the order they were taken', () => {
    expect(levelsOf(counted(20, 40, 20, 20))).toEqual([
      [20, 0],
      [40, 0],
      [20, 1],
      [20, 2],
    ]);
  });

  it('stacks readings that would touch though they are not equal', () => {
    expect(levelsOf(counted(20, 27, 28))).toEqual([
      [20, 0],
      [27, 1],
      [28, 0],
    ]);
  });

  it('stacks five at most and counts the rest', () => {
    const { dots, more } = stackDots(counted(...Array.from({ length: 40 }, () => 20)), xOf, 8);
    expect(dots.map(({ level }) => level)).toEqual([0, 1, 2, 3, 4]);
    expect(more).toEqual([{ x: 20, count: 35 }]);
  });

  it('keeps the last reading in sight, at the top of a full stack', () => {
    const readings = counted(20, 20, 20, 20, 20, 20, 20);
    readings[6]!.last = true;
    const { dots, more } = stackDots(readings, xOf, 8);
    expect(dots[4]).toEqual({ reading: readings[6], x: 20, level: 4 });
    expect(more).toEqual([{ x: 20, count: 2 }]);
  });

  it('keeps held readings in sight as well, under one another', () => {
    const readings = counted(20, 20, 20, 20, 20, 20, 20);
    readings[5]!.state = 'held';
    readings[6]!.last = true;
    const { dots } = stackDots(readings, xOf, 8);
    expect(dots.map(({ reading }) => reading)).toEqual([
      readings[0],
      readings[1],
      readings[2],
      readings[6],
      readings[5],
    ]);
  });

  it('loses no reading: dots and counts add up', () => {
    const values = Array.from({ length: 60 }, (_, index) => (index * 7) % 50);
    const { dots, more } = stackDots(counted(...values), xOf, 8);
    expect(dots.length + more.reduce((sum, { count }) => sum + count, 0)).toBe(60);
  });
});
