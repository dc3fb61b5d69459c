import type { Gauge, GaugeSends } from '@/lib/schema/gauge';
import { formatLength } from '@/lib/units/format-length';
import { parseLength, type ParsedLength } from '@/lib/units/parse-length';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';

/** A gauge as it is being written down; everything is text until it is kept. */
export type GaugeDraft = {
  name: string;
  kind: Gauge['kind'];
  unit: LengthUnit;
  resolution: string;
  uncertainty: string;
  rangeLow: string;
  rangeHigh: string;
  checkedOn: string;
  note: string;
};

export type GaugeFault = {
  field: 'name' | 'resolution' | 'uncertainty' | 'rangeLow' | 'rangeHigh';
  problem: 'missing' | 'not above zero' | 'range' | Exclude<ParsedLength, { kind: 'length' }>;
};

type LengthField = 'resolution' | 'uncertainty' | 'rangeLow' | 'rangeHigh';

/** How it sends is not drafted here: the gauge shows it. */
type KeptGauge = Omit<Gauge, 'id' | 'version' | 'createdAt' | 'struckAt' | keyof GaugeSends>;

/** A draft to begin with: that of a gauge in the register, or of an ordinary micrometer. */
export function gaugeDraftOf(gauge: Gauge | null, decimal: DecimalMark): GaugeDraft {
  if (gauge === null) {
    return {
      name: '',
      kind: 'micrometer',
      unit: 'mm',
      resolution: '',
      uncertainty: '',
      rangeLow: '',
      rangeHigh: '',
      checkedOn: '',
      note: '',
    };
  }
  const { unit } = gauge;
  const text = (pm: number | null) => (pm === null ? '' : exactText(pm, unit, decimal));
  return {
    name: gauge.name,
    kind: gauge.kind,
    unit,
    resolution: text(gauge.resolutionPm),
    uncertainty: text(gauge.uncertaintyPm),
    rangeLow: text(gauge.rangeLowPm),
    rangeHigh: text(gauge.rangeHighPm),
    checkedOn: gauge.checkedOn ?? '',
    note: gauge.note,
  };
}

/** The gauge a draft stands for, or the first field that has to be put right. */
export function draftGauge(
  draft: GaugeDraft,
  decimal: DecimalMark,
): { kind: 'gauge'; gauge: KeptGauge } | { kind: 'fault'; fault: GaugeFault } {
  const fault = (field: GaugeFault['field'], problem: GaugeFault['problem']) => ({
    kind: 'fault' as const,
    fault: { field, problem },
  });
  if (draft.name.trim() === '') return fault('name', 'missing');
  if (draft.resolution.trim() === '') return fault('resolution', 'missing');
  const read: Record<LengthField, number | null> = {
    resolution: null,
    uncertainty: null,
    rangeLow: null,
    rangeHigh: null,
  };
  for (const field of Object.keys(read) as LengthField[]) {
    if (draft[field].trim() === '') continue;
    const length = parseLength(draft[field], { decimal, unit: draft.unit });
    if (length.kind !== 'length') return fault(field, length);
    if (length.pm < (field === 'resolution' ? 1 : 0)) return fault(field, 'not above zero');
    read[field] = length.pm;
  }
  const { resolution, uncertainty, rangeLow, rangeHigh } = read;
  if (rangeLow !== null && rangeHigh !== null && rangeHigh <= rangeLow) {
    return fault('rangeHigh', 'range');
  }
  return {
    kind: 'gauge',
    gauge: {
      name: draft.name.trim(),
      kind: draft.kind,
      unit: draft.unit,
      resolutionPm: resolution!,
      uncertaintyPm: uncertainty,
      rangeLowPm: rangeLow,
      rangeHighPm: rangeHigh,
      checkedOn: draft.checkedOn === '' ? null : draft.checkedOn,
      note: draft.note.trim(),
    },
  };
}

/**
 * The shortest text that is read back as the very same length: in the unit, or in millimetres, with their
 * name, where no decimal in the unit is exact.
 */
function exactText(pm: number, unit: LengthUnit, decimal: DecimalMark): string {
  for (let decimals = 0; decimals <= 12; decimals += 1) {
    const text = formatLength(pm, { unit, decimals, decimal });
    const read = parseLength(`${text} ${unit}`, { decimal, unit });
    if (read.kind === 'length' && read.pm === pm) return text;
  }
  return `${exactText(pm, 'mm', decimal)} mm`;
}
