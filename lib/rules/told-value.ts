import { meanPm } from './mean-pm';

type Read = { valuePm: number; gaugeId: string };
type GaugeStep = { id: string; resolutionPm: number };

/**
 * What readings of one feature on one piece tell: those of the finest gauge among them, and their mean.
 * Null where no gauge among them is known.
 */
export function toldValue<Gauge extends GaugeStep>(
  readings: readonly Read[],
  gauges: ReadonlyMap<string, Gauge>,
): { gauge: Gauge; offPm: number[]; valuePm: number } | null {
  const gauge = finest(readings, gauges);
  if (gauge === undefined) return null;
  const values = readings.filter((one) => one.gaugeId === gauge.id).map((one) => one.valuePm);
  const offPm = values.map((value) => value - values[0]!);
  return { gauge, offPm, valuePm: meanPm(values) };
}

function finest<Gauge extends GaugeStep>(
  readings: readonly Read[],
  gauges: ReadonlyMap<string, Gauge>,
): Gauge | undefined {
  return [...new Set(readings.map((one) => one.gaugeId))]
    .flatMap((id) => gauges.get(id) ?? [])
    .sort((a, b) => a.resolutionPm - b.resolutionPm || (a.id < b.id ? -1 : 1))[0];
}
