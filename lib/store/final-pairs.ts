import type { ThingKind } from '@/lib/schema/change';
import type { StoreTransaction } from './database';
import { refused, type Refused } from './refused';
import { rowsOf } from './rows-of';

/**
 * Why a fit, a feature or a part may not be struck out: final pairs stand on it, and their record would go from
 * every sheet without a word. Nothing where none does, and for every other kind of thing.
 */
export async function finalPairsFault(
  transaction: StoreTransaction,
  kind: ThingKind,
  id: string,
): Promise<Refused | undefined> {
  const live = { struckAt: null };
  const fitIds = await fitsOn();
  if (fitIds.length === 0) return undefined;
  const final = { ...live, state: 'final', fitId: { in: fitIds } };
  const pairs = await rowsOf(transaction, 'pair').where(final);
  return pairs.length === 0 ? undefined : refused('final-pairs', 'struck');

  async function fitsOn(): Promise<string[]> {
    if (kind === 'fit') return [id];
    const ids =
      kind === 'feature'
        ? [id]
        : kind === 'part'
          ? (await rowsOf(transaction, 'feature').where({ ...live, partId: id })).map(
              (one) => one.id,
            )
          : [];
    if (ids.length === 0) return [];
    const names = [{ internalFeatureId: { in: ids } }, { externalFeatureId: { in: ids } }];
    return (await rowsOf(transaction, 'fit').where({ ...live, OR: names })).map((one) => one.id);
  }
}
