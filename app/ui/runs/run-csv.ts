import type { RunView } from '@/lib/rules/run-view';
import type { LengthUnit } from '@/lib/units/picometres';
import { csvLength, csvText } from '../save/csv-cell';

/**
 * What a run chart shows as comma-separated values (RFC 4180): turn, mark, size and its doubt, both limits, and
 * why it was set aside; of several features alike their departures from their own nominals.
 */
export function runCsv(run: RunView, unit: LengthUnit): string {
  const several = run.features.length > 1;
  const limits = `${csvLength(run.limits.lowerPm, unit)},${csvLength(run.limits.upperPm, unit)}`;
  const rows = [...run.points, ...run.aside]
    .sort((a, b) => a.ordinal - b.ordinal)
    .map((row) => {
      const isPoint = 'size' in row;
      const doubt = isPoint ? csvLength(row.size.expandedPm, unit) : '';
      const aside = isPoint ? '' : csvText(row.reason === '' ? 'set aside' : row.reason);
      return `${row.ordinal},${csvText(row.mark)},${csvLength(row.valuePm, unit)},${doubt},${limits},${aside}`;
    });
  const what = several ? 'from nominal' : 'size';
  const head = `${several ? 'turn' : 'piece'},mark,${what} ${unit},plus or minus ${unit},lower limit ${unit},upper limit ${unit},set aside`;
  return [head, ...rows, ''].join('\r\n');
}
