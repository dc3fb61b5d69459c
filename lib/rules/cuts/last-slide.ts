import type { Cut } from '@/lib/schema/fit';
import type { Slide } from './slide';

/** The slide the last cut of a job that says its slide was put on with; null where none does. */
export function lastSlide(cuts: readonly Cut[]): Slide | null {
  const cut = cuts
    .filter((one) => (one.dial ?? null) !== null && (one.divisionPm ?? null) !== null)
    .sort((a, b) => (a.createdAt < b.createdAt ? 1 : -1))[0];
  if (cut === undefined) return null;
  const slide = { dial: cut.dial!, divisionPm: cut.divisionPm!, fineFeed: cut.fineFeed ?? 1 };
  const unit = cut.dialUnit ?? null;
  const { tool } = cut;
  return {
    ...slide,
    bitesPm: 0,
    ...(unit === null ? {} : { unit }),
    ...(tool === '' ? {} : { tool }),
  };
}
