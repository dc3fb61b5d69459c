import type { Material } from '@/lib/schema/material';
import { parseExpansion } from '@/lib/units/parse-expansion';
import type { ParsedQuantity } from '@/lib/units/parse-quantity';
import type { DecimalMark } from '@/lib/units/picometres';

/** A material as a person types it. */
export type MaterialText = {
  name: string;
  expansion: string;
  low: string;
  high: string;
  source: string;
};

export type MaterialFault =
  Extract<ParsedQuantity, { kind: 'error' }> | 'no-name' | 'too-large' | 'order';

export type ReadMaterial =
  | {
      kind: 'material';
      fields: Pick<
        Material,
        'name' | 'expansionNanoPerC' | 'lowNanoPerC' | 'highNanoPerC' | 'source'
      >;
    }
  | { kind: 'wrong'; field: 'name' | 'expansion' | 'low' | 'high'; problem: MaterialFault };

/** A thousandth a degree: more is a wrong power of ten. */
const largestNanoPerC = 1_000_000;

/** Reads a material; an empty least or most is the coefficient itself. */
export function readMaterial(text: MaterialText, decimal: DecimalMark): ReadMaterial {
  const wrong = (field: 'name' | 'expansion' | 'low' | 'high', problem: MaterialFault) =>
    ({ kind: 'wrong', field, problem }) as const;
  if (text.name.trim() === '') return wrong('name', 'no-name');
  const found = { expansion: 0, low: 0, high: 0 };
  for (const field of ['expansion', 'low', 'high'] as const) {
    const typed = text[field].trim() === '' && field !== 'expansion' ? text.expansion : text[field];
    const read = parseExpansion(typed, decimal);
    if (read.kind === 'error') return wrong(field, read);
    if (Math.abs(read.quanta) > largestNanoPerC) return wrong(field, 'too-large');
    found[field] = read.quanta;
  }
  if (found.low > found.expansion) return wrong('low', 'order');
  if (found.high < found.expansion) return wrong('high', 'order');
  return {
    kind: 'material',
    fields: {
      name: text.name.trim(),
      expansionNanoPerC: found.expansion,
      lowNanoPerC: found.low,
      highNanoPerC: found.high,
      source: text.source.trim(),
    },
  };
}
