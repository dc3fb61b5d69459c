'use client';

import { useState } from 'react';
import type { Fit } from '@/lib/schema/fit';
import { keptTemperatures as kept } from '@/lib/rules/heat/fit-temperatures';
import { quantityWords } from '@/lib/text/quantity-words';
import { temperatureFaultWords, temperatureFigure } from '@/lib/text/heat-words';
import { parseTemperature } from '@/lib/units/parse-temperature';
import type { DecimalMark } from '@/lib/units/picometres';

export type TemperatureKey = 'lowest' | 'highest' | 'outer' | 'inner';

const keys = Object.keys(kept) as TemperatureKey[];

/** Hotter or colder than a coefficient can be trusted to, thousandths of a degree C. */
const coldest = -100_000;
const hottest = 1_000_000;

/** The four temperatures of a fit as they are typed, and what can be read of them. */
export function useTemperatures(fit: Fit, decimal: DecimalMark) {
  const [text, setText] = useState<Record<TemperatureKey, string>>(() => {
    const first = (key: TemperatureKey) =>
      temperatureFigure((fit[kept[key][0]] ?? kept[key][1]) / 1000, { decimal });
    return {
      lowest: first('lowest'),
      highest: first('highest'),
      outer: first('outer'),
      inner: first('inner'),
    };
  });
  const errors: Partial<Record<TemperatureKey, string>> = {};
  const milliC: Record<TemperatureKey, number> = { lowest: 0, highest: 0, outer: 0, inner: 0 };
  for (const key of keys) {
    const read = parseTemperature(text[key], decimal);
    if (read.kind === 'error') {
      errors[key] = quantityWords(read, text[key], 'degrees such as 60, or 140 F');
    } else if (read.quanta < coldest || read.quanta > hottest) {
      errors[key] = temperatureFaultWords['out of range'];
    } else milliC[key] = read.quanta;
  }
  const isRead = keys.every((key) => errors[key] === undefined);
  if (isRead && milliC.lowest > milliC.highest) errors.highest = temperatureFaultWords.order;
  return {
    text,
    errors,
    edit: (key: TemperatureKey, value: string) => setText((old) => ({ ...old, [key]: value })),
    /** Null while one of them cannot be read. */
    milliC: Object.keys(errors).length === 0 ? milliC : null,
    /** Nobody has said them for this fit: what is shown is only to begin with. */
    isGuess: keys.every((key) => (fit[kept[key][0]] ?? null) === null),
    isKept: keys.every((key) => fit[kept[key][0]] === milliC[key]),
    fields: Object.fromEntries(keys.map((key) => [kept[key][0], milliC[key]])),
  };
}
