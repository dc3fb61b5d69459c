import type { ThingKind } from '@/lib/schema/change';
import { finalPairsFault } from './final-pairs';
import { logChange, type Act } from './log-change';
import { makePieces } from './make-pieces';
import type { Refused } from './refused';
import { rowsOf } from './rows-of';
import { sameContent } from './same-content';
import { senseless } from './senseless';
import type { Change, Fields, Row } from './thing-types';
import { transact } from './transact';
import type { Who } from './who';

export type Changed<Kind extends ThingKind> =
  | { state: 'changed' | 'known'; row: Row<Kind>; says: string | null }
  | { state: 'stale'; yours: Change<Kind>; current: Row<Kind> }
  | { state: 'unknown' }
  | Refused;

/**
 * Changes a thing, with its line in the change log; strikes it out or puts it back.
 *
 * A change says which version it was made from. From an older one it is `stale`, and nothing is changed:
 * a person sees both texts and decides. Sent again, a change that has been made is `known`.
 *
 * A part whose quantity grows gets its further pieces. One whose quantity shrinks keeps them all; `says`
 * tells how many are over.
 */
export async function changeThing<Kind extends ThingKind>(
  kind: Kind,
  id: string,
  change: Change<Kind>,
  who: Who,
): Promise<Changed<Kind>> {
  return transact(async (transaction) => {
    const rows = rowsOf(transaction, kind);
    const current = await rows.one(id);
    if (current === undefined) return { state: 'unknown' };
    const { version, struck, ...fields } = change as Change<'job'>;
    const at = new Date().toISOString();
    const wanted: Fields = { ...fields, struckAt: strikeAt(struck, current.struckAt, at) };
    if (sameContent(wanted, current)) return { state: 'known', row: current, says: null };
    if (version !== current.version) return { state: 'stale', yours: change, current };
    const fault =
      struck === true
        ? await finalPairsFault(transaction, kind, id)
        : await senseless(transaction, kind, { ...current, ...fields });
    if (fault !== undefined) return fault;
    const isChanged = await rows.change(id, version, wanted);
    if (!isChanged) return { state: 'stale', yours: change, current };
    const row = (await rows.one(id))!;
    await logChange(transaction, who, at, [
      { kind, act: actOf(struck, current.struckAt), before: current, after: row },
    ]);
    if (kind !== 'part' || !('quantity' in fields)) return { state: 'changed', row, says: null };
    const over = await makePieces(transaction, row as Row<'part'>, who, at);
    return { state: 'changed', row, says: over === 0 ? null : tooMany(over) };
  });
}

function strikeAt(struck: boolean | undefined, before: string | null, at: string): string | null {
  if (struck === undefined) return before;
  return struck ? (before ?? at) : null;
}

function actOf(struck: boolean | undefined, before: string | null): Act {
  if (struck === true && before === null) return 'struck';
  if (struck === false && before !== null) return 'put back';
  return 'changed';
}

function tooMany(over: number): string {
  return `${over} more ${over === 1 ? 'piece counts' : 'pieces count'} than the quantity says; none was struck out`;
}
