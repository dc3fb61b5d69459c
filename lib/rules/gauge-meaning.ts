import type { GaugeSends } from '@/lib/schema/gauge';
import type { LengthMeaning, LengthQuestion } from '@/lib/units/parse-length';
import type { LengthUnit } from '@/lib/units/picometres';
import { entryMeaning, isFormKind, type EntryMeaning, type EntrySetting } from './entry-meaning';
import { gaugeMark, gaugeMessage } from './gauge-message';

export type GaugeSetting = EntrySetting & {
  /** How the gauge sends, as it was taught; null where there is none. */
  gauge?: GaugeSends | null;
};

/** What is asked of a text: how it is meant, or in which unit the gauge stood. */
export type GaugeQuestion = LengthQuestion | 'gauge-unit';

/** As the meaning of a typed text, and one question more: which unit the gauge's own button stood at. */
export type GaugeMeaning =
  | Exclude<EntryMeaning, { kind: 'question' }>
  | { kind: 'question'; code: GaugeQuestion; meanings: LengthMeaning[] };

/**
 * What a text means when it may have come from this gauge: read by its mark, without what it writes in
 * front, and in the unit it was taught to be in.
 *
 * A gauge whose figures follow its own mm/inch button is checked by size: a figure within three times of
 * the nominal in one unit cannot be so in the other, 25.4 apart. Where neither is, it is asked. A sign that
 * the gauge prints before every size is no departure from the nominal.
 */
export function gaugeMeaning(
  text: string,
  { gauge = null, ...setting }: GaugeSetting,
): GaugeMeaning {
  const message = gaugeMessage(text, gauge);
  const decimal = gaugeMark(message, gauge, setting.decimal);
  const inUnit = (unit: LengthUnit) => {
    const read = entryMeaning(message, { ...setting, decimal, unit });
    return gauge?.sendsPlus === true ? withPrintedSign(read) : read;
  };
  const read = inUnit(setting.unit);
  const byButton = gauge?.sendsUnit === 'button' || gauge?.sendsUnit === 'says';
  if (!byButton || !bare.test(message) || isFormKind(setting.kind)) return read;
  const { nominalPm = 0 } = setting;
  if (read.kind !== 'length' || read.meaning.isRelative || nominalPm <= 0) return read;
  const both = [inUnit('mm'), inUnit('in')].flatMap((each) =>
    each.kind === 'length' ? [each.meaning] : [],
  );
  const near = both.filter(({ sizePm }) => 3 * sizePm >= nominalPm && sizePm <= 3 * nominalPm);
  if (near.length === 1) return { kind: 'length', meaning: near[0]! };
  return both.length === 2 ? { kind: 'question', code: 'gauge-unit', meanings: both } : read;
}

/** Figures with nothing after them that could be a unit. */
const bare = /^[\s\d.,+\-\u2212]*$/;

function withPrintedSign(read: EntryMeaning): EntryMeaning {
  return read.kind === 'question' && read.code === 'sign-large'
    ? { kind: 'length', meaning: read.meanings[0]! }
    : read;
}
