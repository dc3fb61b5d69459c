import type { OffStrip } from '@/lib/text/strip-labels';
import type { SpanPm, StripData } from './strip-data';

export type OffBothEnds = { left: OffStrip | null; right: OffStrip | null };

/**
 * What lies off either end of a strip: the size, or a reading that was not struck out; the farthest where
 * there are several. Metal still to come off is stock, counted from where turning stops or the aim; anything
 * else is counted from the limit.
 */
export function offStrip(data: StripData, span: SpanPm): OffBothEnds {
  const size = data.size ?? null;
  const cutting = size === null ? data.live === true : size.state === 'to cut';
  const items = (data.readings ?? [])
    .filter(({ state }) => state !== 'struck')
    .map(({ valuePm, state }) => ({ valuePm, stock: cutting && state === 'counted' }));
  if (size !== null) items.push({ valuePm: size.valuePm, stock: cutting });
  items.sort((a, b) => a.valuePm - b.valuePm);

  const lowest = items[0];
  const highest = items.at(-1);
  const stopPm = data.stopAt?.valuePm ?? data.aimPm ?? null;
  const said = (item: typeof lowest, end: OffStrip['end'], limitPm: number | null) =>
    item === undefined
      ? null
      : { end, ...item, fromPm: item.stock ? (stopPm ?? limitPm) : limitPm };
  return {
    left: lowest && lowest.valuePm < span.fromPm ? said(lowest, 'under', data.lowerPm) : null,
    right: highest && highest.valuePm > span.toPm ? said(highest, 'over', data.upperPm) : null,
  };
}
