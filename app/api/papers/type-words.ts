import type { openApi } from '@/lib/http/open-api';

type Document = ReturnType<typeof openApi>;
export type Schema = NonNullable<NonNullable<Document['components']>['schemas']>[string];

/** What a field takes, in parts: plain words, and the names of shapes described elsewhere on the page. */
export type TypeWords = (string | { shape: string })[];

/**
 * A JSON schema in words. `properties` are left to the table of the shape.
 *
 * @example
 * typeWords({ anyOf: [{ $ref: '#/components/schemas/Id' }, { type: 'null' }] });
 * // [{ shape: 'Id' }, ' or null']
 */
export function typeWords(schema: Schema): TypeWords {
  if ('$ref' in schema && schema.$ref !== undefined) {
    return [{ shape: schema.$ref.split('/').at(-1)! }];
  }
  const own = schema as Exclude<Schema, { $ref: string }>;
  const either = own.anyOf ?? own.oneOf;
  if (either !== undefined) {
    return either.flatMap((one, i) => [...(i === 0 ? [] : [' or ']), ...typeWords(one as Schema)]);
  }
  if (own.const !== undefined) return [String(own.const)];
  if (own.enum !== undefined) return [own.enum.map(String).join(', ')];
  if (Array.isArray(own.type)) {
    return own.type.flatMap((type, i) => [
      ...(i === 0 ? [] : [' or ']),
      ...typeWords({ ...own, type } as Schema),
    ]);
  }
  switch (own.type) {
    case 'null':
      return ['null'];
    case 'boolean':
      return ['true or false'];
    case 'integer':
      return [`whole number${rangeWords(own.minimum, own.maximum)}`];
    case 'number':
      return [`number${rangeWords(own.minimum, own.maximum)}`];
    case 'string':
      return [`${own.format ?? 'text'}${lengthWords(own.minLength, own.maxLength)}`];
    case 'array':
      return [`list${lengthWords(own.minItems, own.maxItems)} of `, ...itemWords(own.items)];
    case 'object':
      return ['object'];
    default:
      return ['anything'];
  }
}

function itemWords(items: unknown): TypeWords {
  return typeof items === 'object' && items !== null ? typeWords(items as Schema) : ['anything'];
}

/** The largest whole number JSON carries exactly is no limit anybody chose. */
function rangeWords(low: number | undefined, high: number | undefined): string {
  const bounds = [low, high].map((bound) =>
    bound === undefined || Math.abs(bound) === Number.MAX_SAFE_INTEGER ? undefined : bound,
  );
  return between(bounds[0], bounds[1]);
}

function lengthWords(low: number | undefined, high: number | undefined): string {
  return between(low, high);
}

function between(low: number | undefined, high: number | undefined): string {
  if (low === undefined && high === undefined) return '';
  if (high === undefined) return `, ${low} or more`;
  return low === undefined ? `, ${high} at most` : `, ${low} to ${high}`;
}
