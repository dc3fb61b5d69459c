import type { ThingKind } from '@/lib/schema/change';
import { refused, type Refused } from './refused';
import type { Fields } from './thing-types';

/** Where the limits a row gives contradict one another; a limit that is left open contradicts nothing. */
export function limitsFault(kind: ThingKind, row: Fields): Refused | undefined {
  const above = (low: string, high: string) => {
    const [lower, upper] = [row[low], row[high]];
    return typeof lower === 'number' && typeof upper === 'number' && lower > upper;
  };
  switch (kind) {
    case 'feature':
      return above('lowerPm', 'upperPm') ? refused('limits-crossed', 'lowerPm') : undefined;
    case 'gauge':
      return above('rangeLowPm', 'rangeHighPm')
        ? refused('limits-crossed', 'rangeLowPm')
        : undefined;
    case 'material':
      if (above('lowNanoPerC', 'expansionNanoPerC'))
        return refused('limits-crossed', 'lowNanoPerC');
      return above('expansionNanoPerC', 'highNanoPerC')
        ? refused('limits-crossed', 'highNanoPerC')
        : undefined;
    case 'fitRule':
      return slopeFault(row);
    case 'fit':
      if (above('soakedLowMilliC', 'soakedHighMilliC')) {
        return refused('limits-crossed', 'soakedLowMilliC');
      }
      if (above('minPm', 'maxPm')) return refused('limits-crossed', 'minPm');
      return above('minPm', 'aimPm') || above('aimPm', 'maxPm')
        ? refused('aim-outside', 'aimPm')
        : undefined;
    default:
      return undefined;
  }
}

/** The slopes of a rule stand in order, and its least and most are not one. */
function slopeFault(row: Fields): Refused | undefined {
  const [min, aim, max] = ['minNmPerMm', 'aimNmPerMm', 'maxNmPerMm'].map((name) =>
    Number(row[name]),
  ) as [number, number, number];
  if (min >= max) return refused('limits-crossed', 'minNmPerMm');
  return aim < min || aim > max ? refused('aim-outside', 'aimNmPerMm') : undefined;
}
