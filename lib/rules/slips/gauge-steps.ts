import type { Gauge } from '@/lib/schema/gauge';
import { pmPerIn, pmPerMm } from '@/lib/units/picometres';

type Known = Pick<Gauge, 'kind' | 'unit' | 'resolutionPm'>;

/** One turn of a thimble: 0.5 mm, or 0.025 in; nothing where the gauge has none. Common practice, no source. */
export function thimbleTurnsPm({ kind, unit }: Known): number[] {
  if (kind !== 'micrometer' && kind !== 'bore gauge' && kind !== 'depth gauge') return [];
  return [unit === 'mm' ? pmPerMm / 2 : pmPerIn / 40];
}

/**
 * One turn of a needle: 1 mm on a dial of 0.01, 0.2 or 0.1 mm on a finer one; 0.1 in on a dial of
 * 0.001 in, 0.05 in on one of 0.0005, 0.02 or 0.01 in on a finer one. Nothing where the gauge has none.
 * Common practice, no source.
 */
export function needleTurnsPm({ kind, unit, resolutionPm }: Known): number[] {
  if (kind !== 'dial gauge' && kind !== 'bore gauge' && kind !== 'height gauge') return [];
  if (unit === 'mm') {
    return resolutionPm >= pmPerMm / 100 ? [pmPerMm] : [pmPerMm / 5, pmPerMm / 10];
  }
  if (resolutionPm >= pmPerIn / 1000) return [pmPerIn / 10];
  return resolutionPm >= pmPerIn / 2000 ? [pmPerIn / 20] : [pmPerIn / 50, pmPerIn / 100];
}

/** One line of the sleeve, or one main division: 1 mm or 0.1 in. Common practice, no source. */
export function sleeveLinesPm({ unit }: Known): number[] {
  return [unit === 'mm' ? pmPerMm : pmPerIn / 10];
}

/** What one frame of a micrometer, or one rod of a depth gauge, is longer than the next: 25 mm or 1 in, once to three times. Common practice, no source. */
export function frameStepsPm({ kind, unit }: Known): number[] {
  if (kind !== 'micrometer' && kind !== 'depth gauge') return [];
  const framePm = unit === 'mm' ? 25 * pmPerMm : pmPerIn;
  return [framePm, 2 * framePm, 3 * framePm];
}
