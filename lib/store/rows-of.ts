import type { ThingKind } from '@/lib/schema/change';
import type { StoreTransaction } from './database';
import { tables } from './tables';
import type { Fields, New, Row } from './thing-types';

type Where = Record<string, unknown>;
type Typed = {
  findMany(query: { where: Where; select: Record<string, true> }): Promise<Fields[]>;
  createMany(query: { data: Fields[] }): Promise<unknown>;
  updateMany(query: { where: Where; data: Fields }): Promise<{ count: number }>;
};

/**
 * The rows of one kind within a transaction. Here, and nowhere else, a length changes from the number it
 * is everywhere to the 64-bit integer the typed client wants, and back.
 */
export function rowsOf<Kind extends ThingKind>(transaction: StoreTransaction, kind: Kind) {
  const typed = (transaction as unknown as Record<ThingKind, Typed>)[kind];
  const columns = tables[kind].columns.map(({ name }) => [name, true as const]);
  const select = Object.fromEntries(columns) as Record<string, true>;
  return {
    async where(condition: Where): Promise<Row<Kind>[]> {
      const found = await typed.findMany({ where: condition, select });
      return found.map((row) => change(row, 'bigint', Number) as Row<Kind>);
    },
    async one(id: string): Promise<Row<Kind> | undefined> {
      return (await this.where({ id }))[0];
    },
    async add(rows: readonly (Row<Kind> | (New<Kind> & Fields))[]): Promise<void> {
      if (rows.length > 0) await typed.createMany({ data: rows.map(stored) });
    },
    /** Only where the row still has this version; whether it had. */
    async change(id: string, version: number, fields: Fields): Promise<boolean> {
      const { count } = await typed.updateMany({
        where: { id, version },
        data: { ...stored(fields), version: version + 1 },
      });
      return count === 1;
    },
  };
}

function stored(row: Fields): Fields {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [
      name,
      name.endsWith('Pm') && typeof value === 'number' ? BigInt(value) : value,
    ]),
  );
}

function change(row: Fields, type: 'bigint', to: (value: unknown) => unknown): Fields {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name, typeof value === type ? to(value) : value]),
  );
}
