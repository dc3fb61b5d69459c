import { z } from 'zod';
import { DecimalMark, Id, thing, Unit } from './common';

/** What the shop (id `shop`) or one device has chosen; null means "as the shop" or "as usual". */
const fields = {
  decimal: DecimalMark.nullable(),
  unitShown: Unit.nullable(),
  theme: z.enum(['light', 'dark', 'glare']).nullable().describe('null follows the machine'),
  hand: z.enum(['right', 'left']).nullable(),
  personId: Id.nullable().describe('Who measures on this device'),
};
const shapes = thing({ fixed: {}, fields, made: {} });

export const SettingId = z.union([z.literal('shop'), Id]);
export const setting = {
  Row: shapes.Row.extend({ id: SettingId }),
  New: shapes.New.extend({ id: SettingId }),
  Change: shapes.Change,
};
export type Setting = z.infer<typeof setting.Row>;
