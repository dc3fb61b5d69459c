import type { ThingKind } from '@/lib/schema/change';
import type { StoreTransaction } from './database';
import { fitFault } from './fit-fault';
import { limitsFault } from './limits-fault';
import { pairMarkFault } from './pair-mark-fault';
import { refused, type Refused } from './refused';
import { rowsOf } from './rows-of';
import type { Fields, New } from './thing-types';

type Fault = Refused | undefined;
type Judge<Kind extends ThingKind> = (look: Look, row: New<Kind>) => Promise<Fault>;

/**
 * What makes a row nonsense beside the rest of the book, or nothing: a part of another job, a fit of two
 * bores, two pieces with one mark. Called inside the transaction that would keep the row.
 */
export async function senseless<Kind extends ThingKind>(
  transaction: StoreTransaction,
  kind: Kind,
  row: Fields,
): Promise<Fault> {
  const fault = limitsFault(kind, row);
  if (fault !== undefined) return fault;
  const look = new Look(transaction);
  if ('jobId' in row && !(await look.at('job', row['jobId'] as string))) {
    return refused('no-such-job', 'jobId');
  }
  const judge = judges[kind] as Judge<Kind> | undefined;
  return judge?.(look, row as New<Kind>);
}

const judges: { [Kind in ThingKind]?: Judge<Kind> } = {
  async piece(look, row) {
    const part = await look.in(row, 'part', row.partId);
    if (part === undefined) return refused('no-such-part', 'partId');
    const others = await look.others('piece', row.id, { partId: row.partId });
    if (others.some(({ ordinal }) => ordinal === row.ordinal)) {
      return refused('ordinal-taken', 'ordinal');
    }
    return others.some(({ mark }) => mark === row.mark) ? refused('mark-taken', 'mark') : undefined;
  },

  async feature(look, row) {
    const part = await look.in(row, 'part', row.partId);
    if (part === undefined) return refused('no-such-part', 'partId');
    if (row.pictureId === null) return undefined;
    const picture = await look.in(row, 'picture', row.pictureId);
    return picture === undefined ? refused('no-such-picture', 'pictureId') : undefined;
  },

  async gauge(_, row) {
    return row.sendsEnd === 'comma' && row.sendsMark === ','
      ? refused('comma-twice', 'sendsMark')
      : undefined;
  },

  async fit(look, row) {
    const internal = await look.in(row, 'feature', row.internalFeatureId);
    const external = await look.in(row, 'feature', row.externalFeatureId);
    return fitFault(internal, external);
  },

  async pair(look, row) {
    const fit = await look.in(row, 'fit', row.fitId);
    if (fit === undefined) return refused('no-such-fit', 'fitId');
    const fault =
      (await look.pieceFault(row, 'internalPieceId', fit.internalFeatureId)) ??
      (await look.pieceFault(row, 'externalPieceId', fit.externalFeatureId)) ??
      (await look.personFault(row.personId));
    if (fault !== undefined || !holds(row)) return fault;
    const others = await look.others('pair', row.id, { fitId: row.fitId, struckAt: null });
    const isTaken = others
      .filter(holds)
      .some(
        (other) =>
          other.internalPieceId === row.internalPieceId ||
          other.externalPieceId === row.externalPieceId,
      );
    if (isTaken) return refused('piece-taken', 'state');
    return pairMarkFault(row, await look.at('pair', row.id), others);
  },

  async cut(look, row) {
    const fault = await look.pieceFault(row, 'pieceId', row.featureId);
    if (fault !== undefined) return fault;
    const others = await look.others('cut', row.id, {
      pieceId: row.pieceId,
      featureId: row.featureId,
      ordinal: row.ordinal,
    });
    return others.length > 0 ? refused('ordinal-taken', 'ordinal') : undefined;
  },

  async run(look, row) {
    const feature = await look.in(row, 'feature', row.featureId);
    if (feature === undefined) return refused('no-such-feature', 'featureId');
    for (const id of row.alikeIds) {
      const isOther = id !== row.featureId && (await look.in(row, 'feature', id)) !== undefined;
      if (!isOther) return refused('no-such-feature', 'alikeIds');
    }
    return undefined;
  },

  async runEvent(look, row) {
    const run = await look.in(row, 'run', row.runId);
    return run === undefined ? refused('no-such-run', 'runId') : undefined;
  },

  async departure(look, row) {
    if (row.partId !== null && !(await look.in(row, 'part', row.partId))) {
      return refused('no-such-part', 'partId');
    }
    const others = await look.others('departure', row.id, { jobId: row.jobId, number: row.number });
    return others.length > 0 ? refused('number-taken', 'number') : undefined;
  },

  async setting(look, row) {
    return look.personFault(row.personId);
  },
};

/** A pair that is final or locked has its two pieces to itself. */
function holds({ state }: { state: string }): boolean {
  return state === 'final' || state === 'locked';
}

/** Looks at the rest of the book for a judge. */
class Look {
  constructor(private readonly transaction: StoreTransaction) {}

  at<Kind extends ThingKind>(kind: Kind, id: string) {
    return rowsOf(this.transaction, kind).one(id);
  }

  async in<Kind extends ThingKind>({ jobId }: { jobId: string }, kind: Kind, id: string) {
    const found = await this.at(kind, id);
    return (found as Fields | undefined)?.['jobId'] === jobId ? found : undefined;
  }

  others<Kind extends ThingKind>(kind: Kind, id: string, condition: Fields) {
    return rowsOf(this.transaction, kind).where({ ...condition, id: { not: id } });
  }

  /** A piece must be in the job, and of the part whose feature it is to have. */
  async pieceFault(row: Fields & { jobId: string }, at: string, featureId: string): Promise<Fault> {
    const feature = await this.in(row, 'feature', featureId);
    if (feature === undefined) return refused('no-such-feature', 'featureId');
    const piece = await this.in(row, 'piece', row[at] as string);
    if (piece === undefined) return refused('no-such-piece', at);
    return piece.partId === feature.partId ? undefined : refused('piece-of-another-part', at);
  }

  async personFault(personId: string | null): Promise<Fault> {
    if (personId === null || (await this.at('person', personId))) return undefined;
    return refused('no-such-person', 'personId');
  }
}
