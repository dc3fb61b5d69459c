import { normalQuantile } from '../distributions/normal-quantile';
import { mean } from '../statistics/mean';
import { standardDeviation } from '../statistics/standard-deviation';
import { capabilityIndices, type CapabilityIndices } from './capability-indices';
import { cpInterval } from './cp-interval';
import { cpkInterval } from './cpk-interval';
import { driftSinceEvent } from './drift-since-event';
import {
  requireAtLeast,
  requireConfidence,
  requireEvents,
  requireFinite,
  requirePositive,
} from './guards';
import { individualsLimits } from './individuals-limits';
import type { Interval } from './interval';

export type RunCapabilityInput = {
  /** Sizes in the order made, mm, off any nominal; the limits off the same one. */
  sizesMm: readonly number[];
  lowerMm?: number;
  upperMm?: number;
  targetMm?: number;
  /** Smallest step the gauge shows, mm. */
  resolutionMm?: number;
  /** Two-sided, for the intervals and for telling a drift. */
  confidence: number;
  /** Index (from 0) of each size made just after an event. */
  eventsBefore?: readonly number[];
};

export type CapabilityDoubt =
  /** Fewer than thirty pieces: the interval is wide and the form of the spread unknown. */
  | 'too few'
  /** Some stretch between events drifts: there is no one mean to speak of. */
  | 'drifting'
  /** A piece is farther out than chance puts one of so many: the run is not steady. */
  | 'not steady'
  /** The gauge shows steps of more than a tenth of the tolerance, or no spread at all. */
  | 'gauge too coarse';

export type RunCapability = {
  pieces: number;
  /** Why the figures mean nothing yet; empty when they may be used. */
  doubts: CapabilityDoubt[];
  /** Left out when every size is the same. Pp and Ppk: mean and standard deviation of all pieces. */
  overall?: {
    meanMm: number;
    sigmaMm: number;
    indices: CapabilityIndices;
    /** Interval on Pp, with both limits only; and on Ppk. */
    cpInterval?: Interval;
    cpkInterval: Interval;
  };
  /** Cp and Cpk: sigma from the moving ranges between events. Left out when that is 0. */
  shortTerm?: { sigmaMm: number; indices: CapabilityIndices };
};

/** Fewest pieces for an index to be used: common practice, no source. */
const enoughPieces = 30;

/**
 * Capability of a run, with confidence limits and the reasons why it may mean nothing.
 *
 * Figures are given whenever they can be worked out; with a doubt beside them they are not to be
 * quoted. A drift is one that can be told from scatter in any stretch between events
 * (`driftSinceEvent`). Steady is a run none of whose pieces is beyond k sigma of `individualsLimits`, k so that
 * chance puts no piece of n there with the confidence given: (1 + confidence^(1/n))/2 of a normal, 3.1 for
 * thirty and 3.5 for a hundred pieces at 95 %. Three for any number would call most long runs unsteady.
 *
 * Limits: normal sizes are assumed, not tested; at 95 % one steady stretch in twenty is called
 * drifting and about as many not steady, a few more since sigma is estimated. Cost: O(n). Sources: [iso-22514-2], [nist-handbook] 6.1.6; a tenth of the tolerance for
 * the gauge [iso-22514-7].
 *
 * @throws {MathsInputError} `run-capability/too-few`, `run-capability/not-finite`,
 *   `run-capability/confidence`, `run-capability/events`, `run-capability/not-positive`,
 *   `capability-indices/limits`, `individuals-limits/no-range`
 *
 * @example
 * runCapability({ sizesMm: [0.001, 0.002, 0.001], lowerMm: 0, upperMm: 0.02, confidence: 0.95 }).doubts;
 * // ['too few']
 */
export function runCapability(input: RunCapabilityInput): RunCapability {
  const { sizesMm, lowerMm, upperMm, targetMm, resolutionMm, confidence } = input;
  const eventsBefore = input.eventsBefore ?? [];
  requireAtLeast('runCapability', 'sizes', sizesMm.length, 2);
  requireFinite('runCapability', 'sizes', sizesMm);
  requireConfidence('runCapability', confidence);
  requireEvents('runCapability', eventsBefore, sizesMm.length);
  if (resolutionMm !== undefined) requirePositive('runCapability', 'resolution', resolutionMm);

  const limits = {
    ...(lowerMm !== undefined && { lower: lowerMm }),
    ...(upperMm !== undefined && { upper: upperMm }),
    ...(targetMm !== undefined && { target: targetMm }),
  };
  const pieces = sizesMm.length;
  const meanMm = mean(sizesMm);
  const chart = individualsLimits({ values: sizesMm, eventsBefore });
  const sigmaMm = standardDeviation(sizesMm);
  const toleranceMm = (upperMm ?? Infinity) - (lowerMm ?? -Infinity);

  const doubts: CapabilityDoubt[] = [];
  if (pieces < enoughPieces) doubts.push('too few');
  if (stretches(sizesMm, eventsBefore).some((part) => drifts(part, confidence))) {
    doubts.push('drifting');
  }
  const farMm = chart.sigma * -normalQuantile((1 - confidence ** (1 / pieces)) / 2);
  if (sizesMm.some((size) => Math.abs(size - chart.mean) > farMm)) doubts.push('not steady');
  if (
    sigmaMm === 0 ||
    (resolutionMm !== undefined && 10 * resolutionMm > toleranceMm * (1 + 1e-12))
  ) {
    doubts.push('gauge too coarse');
  }

  const result: RunCapability = { pieces, doubts };
  if (sigmaMm > 0) {
    const indices = capabilityIndices({ mean: meanMm, sigma: sigmaMm, ...limits });
    result.overall = {
      meanMm,
      sigmaMm,
      indices,
      ...(indices.cp !== undefined && { cpInterval: cpInterval(indices.cp, pieces, confidence) }),
      cpkInterval: cpkInterval(indices.cpk, pieces, confidence),
    };
  }
  if (chart.sigma > 0) {
    const indices = capabilityIndices({ mean: meanMm, sigma: chart.sigma, ...limits });
    result.shortTerm = { sigmaMm: chart.sigma, indices };
  }
  return result;
}

/** The sizes between one event and the next. */
function stretches(sizesMm: readonly number[], eventsBefore: readonly number[]): number[][] {
  const starts = [...new Set([0, ...eventsBefore])].sort((a, b) => a - b);
  return starts.map((start, i) => sizesMm.slice(start, starts[i + 1]));
}

function drifts(sizesMm: readonly number[], confidence: number): boolean {
  const ordinals = sizesMm.map((_, i) => i);
  const drift = driftSinceEvent({ ordinals, sizesMm, confidence });
  return drift.kind === 'line' && drift.g < 1;
}
