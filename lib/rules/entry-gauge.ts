import type { Feature } from '@/lib/schema/feature';
import type { Gauge, GaugeKind } from '@/lib/schema/gauge';

/** A gauge on offer for a feature. */
export type OfferedGauge = {
  gauge: Gauge;
  /** Its range takes the nominal in; true where it states no range. */
  covers: boolean;
  /** It is of a kind this feature is usually measured with. */
  suits: boolean;
};

/**
 * Every gauge of the shop, those that can measure this feature first: range, then kind, then the finer.
 *
 * Nothing is chosen here; a struck gauge is left out.
 */
export function entryGauge(
  gauges: readonly Gauge[],
  feature: Pick<Feature, 'kind' | 'nominalPm'>,
): OfferedGauge[] {
  const rank = (offer: OfferedGauge) => (offer.covers ? 0 : 2) + (offer.suits ? 0 : 1);
  return gauges
    .filter((gauge) => gauge.struckAt === null)
    .map((gauge) => ({
      gauge,
      covers: covers(gauge, feature.nominalPm),
      suits: usual[feature.kind].includes(gauge.kind),
    }))
    .sort((a, b) => rank(a) - rank(b) || a.gauge.resolutionPm - b.gauge.resolutionPm);
}

function covers({ rangeLowPm, rangeHighPm }: Gauge, nominalPm: number): boolean {
  return nominalPm >= (rangeLowPm ?? -Infinity) && nominalPm <= (rangeHighPm ?? Infinity);
}

// Common practice, no source.
const internal: GaugeKind[] = ['bore gauge', 'plug gauge', 'caliper'];
const external: GaugeKind[] = ['micrometer', 'caliper'];
const lengths: GaugeKind[] = ['caliper', 'micrometer', 'height gauge', 'depth gauge'];
const form: GaugeKind[] = ['dial gauge'];

const usual: Record<Feature['kind'], GaugeKind[]> = {
  bore: internal,
  slot: internal,
  outside: external,
  width: external,
  length: lengths,
  depth: ['depth gauge', 'caliper', 'height gauge'],
  step: ['depth gauge', 'caliper', 'height gauge'],
  position: ['height gauge', 'caliper'],
  roundness: form,
  'run-out': form,
  straightness: form,
};
