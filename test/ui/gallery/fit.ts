import type { FitRulesData } from '@/app/ui/fit-rules/fit-rules-data';
import { mm } from './strips';

const pieces = (letter: string, sizes: Record<number, number>) =>
  Object.entries(sizes).map(([number, size]) => ({
    mark: `${letter}${number}`,
    sizePm: mm(size),
    expandedPm: mm(0.001),
  }));

/** A target in millimetres with its working limits. */
const about = (size: number) => ({
  targetPm: mm(size),
  noLargerPm: mm(size + 0.001),
  noSmallerPm: mm(size - 0.001),
});

/** The eight liners and pistons of the drawing `fits`. */
export const fanFit: FitRulesData = {
  unit: 'mm',
  decimal: '.',
  resolutionPm: mm(0.001),
  aimPm: mm(0.01),
  internal: {
    title: 'Liners',
    feature: 'bore',
    lowerPm: mm(18),
    upperPm: mm(18.018),
    pieces: pieces('L', {
      1: 18.007,
      2: 18.011,
      3: 18.004,
      4: 18.013,
      5: 18.008,
      6: 18.002,
      7: 18.01,
      8: 18.016,
    }),
  },
  external: {
    title: 'Pistons',
    feature: 'outside',
    lowerPm: mm(17.988),
    upperPm: mm(18.01),
    pieces: pieces('P', { 1: 17.997, 2: 18.001, 3: 17.991, 4: 18.003, 5: 17.999, 6: 17.994 }),
  },
  ties: [
    { internal: 'L1', external: 'P1', clearancePm: mm(0.01), state: 'inside' },
    { internal: 'L2', external: 'P2', clearancePm: mm(0.01), state: 'inside' },
    { internal: 'L3', external: 'P6', clearancePm: mm(0.01), state: 'inside' },
    { internal: 'L4', external: 'P4', clearancePm: mm(0.01), state: 'inside' },
    { internal: 'L5', external: 'P5', clearancePm: mm(0.009), state: 'inside' },
    { internal: 'L6', external: 'P3', clearancePm: mm(0.011), state: 'inside' },
  ],
  toMake: [
    { internal: 'L7', external: 'P7', ...about(18) },
    { internal: 'L8', external: 'P8', ...about(18.006) },
  ],
};

const many = 26;
const spread = (index: number, by: number) => ((index * by) % many) * 0.0006;

/** More than twelve pieces a side: marks stand in lanes. Some pairs are unsure, some out. */
export const manyFit: FitRulesData = {
  ...fanFit,
  internal: {
    ...fanFit.internal,
    pieces: Array.from({ length: many }, (_, index) => ({
      mark: `L${index + 1}`,
      sizePm: mm(18.001 + spread(index, 7)),
      expandedPm: mm(0.001),
    })),
  },
  external: {
    ...fanFit.external,
    pieces: Array.from({ length: many }, (_, index) => ({
      mark: `P${index + 1}`,
      sizePm: mm(17.991 + spread(index, 7) + (index % 5 === 0 ? 0.002 : 0)),
      expandedPm: mm(0.001),
    })),
  },
  ties: Array.from({ length: many }, (_, index) => ({
    internal: `L${index + 1}`,
    external: `P${index + 1}`,
    clearancePm: mm(index % 5 === 0 ? 0.008 : 0.01),
    state: index % 10 === 0 ? ('out' as const) : index % 5 === 0 ? 'unsure' : 'inside',
  })),
  toMake: [],
};
