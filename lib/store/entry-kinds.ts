import type { z } from 'zod';
import { NewCorrection, NewReading } from '@/lib/schema/reading';
import type { RefusalCode } from './refused';
import { correctionTable, readingTable, type Column, type Table } from './tables';

/** Why an entry cannot be kept, as SQL over the tables of `joins`, and the field at fault. */
export type Fault = { code: RefusalCode; at: string; when: string };

/** One kind of row that is only ever added. `joins`, `jobId` and faults name a field as {field}. */
export type EntryKind = {
  name: 'reading' | 'correction';
  schema: z.ZodType;
  table: Table;
  /** What a device sends of it, in the order it is handed to the database. */
  columns: readonly Column[];
  joins: string;
  jobId: string;
  faults: readonly Fault[];
};

const withoutPerson: Fault = {
  code: 'no-such-person',
  at: 'personId',
  when: '{personId} IS NOT NULL AND h."id" IS NULL',
};

export const readingKind: EntryKind = {
  name: 'reading',
  schema: NewReading,
  table: readingTable,
  columns: columnsOf(readingTable, NewReading),
  joins: `LEFT JOIN "Piece" p ON p."id" = {pieceId}
    LEFT JOIN "Feature" f ON f."id" = {featureId}
    LEFT JOIN "Gauge" g ON g."id" = {gaugeId}
    LEFT JOIN "Person" h ON h."id" = {personId}`,
  jobId: 'p."jobId"',
  faults: [
    { code: 'no-such-piece', at: 'pieceId', when: 'p."id" IS NULL' },
    { code: 'no-such-feature', at: 'featureId', when: 'f."id" IS NULL' },
    { code: 'piece-of-another-part', at: 'pieceId', when: 'f."partId" <> p."partId"' },
    { code: 'no-such-gauge', at: 'gaugeId', when: 'g."id" IS NULL' },
    withoutPerson,
  ],
};

/** The reading it names may not be there yet; then its job is that of the piece it moves to, or unknown. */
export const correctionKind: EntryKind = {
  name: 'correction',
  schema: NewCorrection,
  table: correctionTable,
  columns: columnsOf(correctionTable, NewCorrection),
  joins: `LEFT JOIN "Reading" r ON r."id" = {readingId}
    LEFT JOIN "Piece" p ON p."id" = {toPieceId}
    LEFT JOIN "Feature" f ON f."id" = {toFeatureId}
    LEFT JOIN "Person" h ON h."id" = {personId}`,
  jobId: 'coalesce(r."jobId", p."jobId")',
  faults: [
    {
      code: 'no-such-piece',
      at: 'toPieceId',
      when: `{toPieceId} IS NOT NULL AND (p."id" IS NULL OR p."jobId" <> coalesce(r."jobId", p."jobId"))`,
    },
    {
      code: 'no-such-feature',
      at: 'toFeatureId',
      when: `{toFeatureId} IS NOT NULL AND (f."id" IS NULL OR f."jobId" <> coalesce(r."jobId", f."jobId"))`,
    },
    {
      code: 'piece-of-another-part',
      at: 'toPieceId',
      when: 'p."id" IS NOT NULL AND f."id" IS NOT NULL AND f."partId" <> p."partId"',
    },
    withoutPerson,
  ],
};

function columnsOf(table: Table, sent: z.ZodObject): Column[] {
  return table.columns.filter(({ name }) => name in sent.shape);
}
