import type { Gauge } from '@/lib/schema/gauge';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import type { DecimalMark } from '@/lib/units/picometres';
import { dayOf } from './when';

type GaugeFacts = Pick<
  Gauge,
  'unit' | 'resolutionPm' | 'uncertaintyPm' | 'rangeLowPm' | 'rangeHighPm' | 'checkedOn'
>;

/** What the register says of a gauge, in its own unit; null where nobody has said. */
export function gaugeWords(
  gauge: GaugeFacts,
  decimal: DecimalMark,
): { resolution: string; uncertainty: string | null; range: string; checked: string | null } {
  const { unit } = gauge;
  const name = unit === 'mm' ? 'mm' : 'inch';
  const figure = (pm: number) => {
    const decimals = decimalsForResolution(finest(pm, gauge.resolutionPm), unit);
    return formatLength(pm, { unit, decimals, decimal });
  };
  const whole = (pm: number) => {
    const text = formatLength(pm, { unit, decimals: 3, decimal });
    return text.replace(/[.,]?0+$/, '') || '0';
  };
  const { uncertaintyPm, rangeLowPm, rangeHighPm, checkedOn } = gauge;
  // A day is the same wherever it is read: at noon no time zone makes it the one before.
  return {
    resolution: `${figure(gauge.resolutionPm)} ${name}`,
    uncertainty: uncertaintyPm === null ? null : `± ${figure(uncertaintyPm)} ${name}`,
    range:
      rangeLowPm === null && rangeHighPm === null
        ? ''
        : rangeHighPm === null
          ? `from ${whole(rangeLowPm ?? 0)} ${name}`
          : `${whole(rangeLowPm ?? 0)} to ${whole(rangeHighPm)} ${name}`,
    checked:
      checkedOn === null ? null : `${dayOf(`${checkedOn}T12:00:00`)} ${checkedOn.slice(0, 4)}`,
  };
}

/** The place a stated figure needs: that of the gauge, or finer where the figure is finer. */
function finest(pm: number, resolutionPm: number): number {
  let step = resolutionPm;
  while (pm % step !== 0 && step > 1000) step /= 10;
  return step;
}
