import { z } from 'zod';
import {
  createDocument,
  type ZodOpenApiOperationObject,
  type ZodOpenApiOverride,
  type ZodOpenApiPathsObject,
} from 'zod-openapi';
import { Change, thingKinds } from '@/lib/schema/change';
import { Id, Instant, LengthPm, PositivePm } from '@/lib/schema/common';
import { JobStart, JobStarted } from '@/lib/schema/new-job';
import {
  Correction,
  NewCorrection,
  NewReading,
  Outcome,
  Outcomes,
  Reading,
} from '@/lib/schema/reading';
import { JobSheet } from '@/lib/schema/sheet';
import { things } from '@/lib/schema/things';
import { addresses } from './addresses';
import type { Address } from './described';
import { Problem } from './problem';
import { problemCodes } from './problem-codes';

type Document = ReturnType<typeof createDocument>;
let made: Document | undefined;

/** The OpenAPI 3.1 document of the API, made once from the table of addresses and the schemas. */
export function openApi(): Document {
  made ??= createDocument(
    {
      openapi: '3.1.0',
      info: {
        title: 'Fitwright',
        version: '1',
        description: introduction,
        license: { name: 'MIT', identifier: 'MIT' },
      },
      servers: [{ url: '/api/v1' }],
      paths: pathsOf(addresses),
      components: { schemas: namedSchemas() },
    },
    { override: asOneSchema },
  );
  return made;
}

/**
 * What is sent and what is answered share one schema: an answer may come to have more fields, so it is not
 * closed. A format says what its long pattern would.
 */
const asOneSchema: ZodOpenApiOverride = ({ jsonSchema, zodSchema }) => {
  const { def } = zodSchema as unknown as { def: { type: string; catchall?: unknown } };
  if (def.type === 'object' && def.catchall === undefined) delete jsonSchema.additionalProperties;
  if (jsonSchema.format !== undefined) delete jsonSchema.pattern;
};

const introduction = [
  'The one way by which anything comes into the notebook, from its own screens and from other programs.',
  'Lengths are whole picometres (1 mm = 1 000 000 000 pm, 1 in = 25 400 000 000 pm), instants RFC 3339.',
  'Ids are UUIDs made by whoever sends; sending the same again is harmless. Nothing is deleted: a thing is struck out and can be put back, a reading is voided by a correction.',
  'A change is JSON (`content-type: application/json`) and says where it comes from: the header `Origin` has to be the address of this server, which a browser sees to by itself.',
  'Errors are RFC 9457 problems; the last part of `type` is a stable code.',
].join('\n\n');

const Who = z.object({
  'fitwright-device': Id.describe('The device the change is made on'),
  'fitwright-person': Id.optional().describe('Who makes it, where one is chosen'),
});

function pathsOf(table: readonly Address[]): ZodOpenApiPathsObject {
  const paths: ZodOpenApiPathsObject = {};
  for (const address of table) {
    paths[address.path] = { ...paths[address.path], [address.method]: operationOf(address) };
  }
  return paths;
}

function operationOf(address: Address): ZodOpenApiOperationObject {
  const { summary, more, params, query, who, body } = address;
  return {
    summary,
    ...(more !== undefined && { description: more }),
    requestParams: {
      ...(params && { path: params }),
      ...(query && { query }),
      ...(who && { header: Who }),
    },
    ...(body && {
      requestBody: { required: true, content: { 'application/json': { schema: body } } },
    }),
    responses: { ...answersOf(address), ...problemsOf(address) } as never,
  };
}

function answersOf({ answers }: Address) {
  const entries = Object.entries(answers).map(([status, { says, body, type, headers }]) => [
    status,
    {
      description: says,
      ...(headers && { headers }),
      content: { [type ?? 'application/json']: body ? { schema: body } : {} },
    },
  ]);
  return Object.fromEntries(entries) as Record<string, object>;
}

/** One answer for each status, naming the codes that come with it. */
function problemsOf({ method, problems, refusable }: Address) {
  const byStatus = new Map<number, string[]>();
  const also = method === 'get' ? [] : (['disk-full'] as const);
  for (const code of [...problems, ...always, ...also]) {
    const [status, title] = problemCodes[code];
    byStatus.set(status, [...(byStatus.get(status) ?? []), `\`${code}\`: ${title}.`]);
  }
  if (refusable)
    byStatus.get(422)!.push('Other codes: what it says makes no sense beside the rest.');
  const content = { 'application/problem+json': { schema: Problem } };
  return Object.fromEntries(
    [...byStatus].map(([status, says]) => [status, { description: says.join('\n\n'), content }]),
  );
}

const always = ['unforeseen', 'database-busy', 'database-away'] as const;

function namedSchemas(): Record<string, z.ZodType> {
  const named: Record<string, z.ZodType> = {
    Id,
    Instant,
    LengthPm,
    PositivePm,
    Problem,
    JobStart,
    JobStarted,
    JobSheet,
    NewReading,
    Reading,
    NewCorrection,
    Correction,
    Outcome,
    Outcomes,
    Change,
  };
  for (const kind of thingKinds) {
    const name = kind[0]!.toUpperCase() + kind.slice(1);
    named[name] = things[kind].Row;
    named[`New${name}`] = things[kind].New;
    named[`${name}Change`] = things[kind].Change;
  }
  return named;
}
