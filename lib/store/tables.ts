import type { z } from 'zod';
import type { ThingKind } from '@/lib/schema/change';
import { Correction, Reading } from '@/lib/schema/reading';
import { things } from '@/lib/schema/things';

/** `boolean` and `json` columns have another form in SQLite than on the wire; the others have not. */
export type Column = {
  name: string;
  as: 'text' | 'integer' | 'real' | 'boolean' | 'json';
  /** The SQL that reads it, where it is more than the column itself. */
  sql?: (alias: string) => string;
};

/** Where a kind of row is kept, and by which columns its rows are ordered. */
export type Table = { name: string; order: readonly string[]; columns: readonly Column[] };

const table = (name: string, order: readonly string[], row: z.ZodObject): Table => ({
  name,
  order,
  columns: Object.entries(row.shape).map(([column, type]) => ({
    name: column,
    as: formOf(type as z.ZodType),
  })),
});

/** The table of every editable thing; columns are those of its schema. */
export const tables: Record<ThingKind, Table> = {
  job: table('Job', ['number'], things.job.Row),
  part: table('Part', ['position', 'id'], things.part.Row),
  piece: table('Piece', ['partId', 'ordinal', 'id'], things.piece.Row),
  feature: table('Feature', ['position', 'id'], things.feature.Row),
  gauge: table('Gauge', ['createdAt', 'id'], things.gauge.Row),
  person: table('Person', ['createdAt', 'id'], things.person.Row),
  fit: table('Fit', ['createdAt', 'id'], things.fit.Row),
  pair: table('Pair', ['createdAt', 'id'], things.pair.Row),
  cut: table('Cut', ['pieceId', 'featureId', 'ordinal', 'id'], things.cut.Row),
  run: table('Run', ['createdAt', 'id'], things.run.Row),
  runEvent: table('RunEvent', ['afterOrdinal', 'at', 'id'], things.runEvent.Row),
  departure: table('Departure', ['number', 'id'], things.departure.Row),
  setting: table('Setting', ['id'], things.setting.Row),
  picture: table('Picture', ['createdAt', 'id'], things.picture.Row),
  material: table('Material', ['createdAt', 'id'], things.material.Row),
  fitRule: table('FitRule', ['createdAt', 'id'], things.fitRule.Row),
};

export const readingTable = table('Reading', ['seq'], Reading);
export const correctionTable = jobOfReading(table('Correction', ['seq'], Correction));

/** A correction that came before its reading does not know its job; the reading it names does. */
function jobOfReading({ columns, ...rest }: Table): Table {
  return {
    ...rest,
    columns: columns.map((column) =>
      column.name === 'jobId' ? { ...column, sql: itsJob } : column,
    ),
  };
}

function itsJob(alias: string): string {
  return `coalesce(${alias}."jobId",
    (SELECT q."jobId" FROM "Reading" q WHERE q."id" = ${alias}."readingId"))`;
}

function formOf(type: z.ZodType): Column['as'] {
  type Def = { type: string; format?: string; innerType?: { def: Def } };
  let { def } = type as { def: Def };
  while (def.innerType !== undefined) ({ def } = def.innerType);
  switch (def.type) {
    case 'number':
      return def.format === undefined ? 'real' : 'integer';
    case 'boolean':
      return 'boolean';
    case 'array':
      return 'json';
    default:
      return 'text';
  }
}
