import { gaugeEnough, type GaugeEnough } from './cuts/gauge-enough';
import type { GaugeFacts, Size } from './size';

type Known = Pick<Size, 'expandedPm' | 'gaugeId'>;

/**
 * Whether the gauge is good enough for what a piece is made to: one rule for the target card and the Cut screen.
 * Judged by the size that governs the piece, or its partner's while the piece is not measured.
 */
export function gaugeForTarget(
  { own, partner }: { own: Known | null; partner: Known | null },
  limits: { lowerPm: number; upperPm: number },
  gauges: ReadonlyMap<string, GaugeFacts>,
): GaugeEnough | null {
  const size = own ?? partner;
  const gauge = size === null ? undefined : gauges.get(size.gaugeId);
  return size === null || gauge === undefined
    ? null
    : gaugeEnough(size, limits, gauge.resolutionPm);
}
