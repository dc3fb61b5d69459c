import { describe, expect, it } from 'vitest';
import { openApi } from '@/lib/http/open-api';
import { problemCodes } from '@/lib/http/problem-codes';
import { typeWords, type Schema } from '@/app/api/papers/type-words';

type Loose = Record<string, unknown>;
const document = openApi() as unknown as {
  openapi: string;
  paths: Record<string, Record<string, Loose>>;
  components: { schemas: Record<string, Loose> };
};
const operations = Object.entries(document.paths).flatMap(([path, item]) =>
  Object.entries(item).map(([method, operation]) => ({
    name: `${method} ${path}`,
    method,
    path,
    operation,
  })),
);

describe('openApi', () => {
  it('is OpenAPI 3.1', () => {
    expect(document.openapi).toBe('3.1.0');
  });

  it('has one schema for what is sent and what is answered', () => {
    const doubles = Object.keys(document.components.schemas).filter((name) =>
      /(In|Out)put$/.test(name),
    );
    expect(doubles).toEqual([]);
  });

  it('points at nothing that it does not hold', () => {
    const refs = [...JSON.stringify(document).matchAll(/"\$ref":"([^"]+)"/g)].map(
      ([, ref]) => ref!,
    );
    const known = Object.keys(document.components.schemas).map(
      (name) => `#/components/schemas/${name}`,
    );
    expect(refs.length).toBeGreaterThan(100);
    expect(refs.filter((ref) => !known.includes(ref))).toEqual([]);
  });

  it('has a sentence for every operation and names every part of its path', () => {
    for (const { name, path, operation } of operations) {
      expect(String(operation['summary']), name).toMatch(/^[A-Z].+[^.]$/);
      const inPath = ((operation['parameters'] ?? []) as { in: string; name: string }[])
        .filter(({ in: where }) => where === 'path')
        .map((parameter) => parameter.name);
      expect(inPath, name).toEqual([...path.matchAll(/\{(\w+)\}/g)].map(([, part]) => part));
    }
  });

  it('says of every change that it takes JSON, and of every problem which codes it has', () => {
    for (const { name, method, operation } of operations) {
      const body = operation['requestBody'] as { content: Loose } | undefined;
      expect(Object.keys(body?.content ?? {}), name).toEqual(
        method === 'get' ? [] : ['application/json'],
      );
      const responses = operation['responses'] as Record<
        string,
        { description: string; content: Loose }
      >;
      const problems = Object.entries(responses).filter(([status]) => Number(status) >= 400);
      expect(problems.length, name).toBeGreaterThan(1);
      for (const [status, { description, content }] of problems) {
        const codes = [...description.matchAll(/`([^`]+)`/g)].map(
          ([, code]) => code as keyof typeof problemCodes,
        );
        expect(
          codes.map((code) => problemCodes[code][0]),
          `${name} ${status}`,
        ).toEqual(codes.map(() => Number(status)));
        expect(Object.keys(content)).toEqual(['application/problem+json']);
      }
    }
  });

  it('asks who makes it of every change but a batch, which says so itself', () => {
    const without = operations
      .filter(({ method }) => method !== 'get')
      .filter(
        ({ operation }) =>
          !JSON.stringify(operation['parameters'] ?? []).includes('fitwright-device'),
      )
      .map(({ name }) => name);
    expect(without).toEqual([
      'post /readings',
      'post /corrections',
      'post /cut-log',
      'post /event-log',
      'post /strike-log',
      'post /example',
    ]);
  });
});

describe('typeWords', () => {
  it.each<[Schema, string]>([
    [{ $ref: '#/components/schemas/Id' }, '<Id>'],
    [
      { anyOf: [{ $ref: '#/components/schemas/LengthPm' }, { type: 'null' }] },
      '<LengthPm> or null',
    ],
    [{ type: ['string', 'null'] }, 'text or null'],
    [{ type: 'string', maxLength: 120 }, 'text, 120 at most'],
    [{ type: 'string', format: 'date' }, 'date'],
    [{ type: 'string', enum: ['mm', 'in'] }, 'mm, in'],
    [{ type: 'integer', minimum: 1, maximum: Number.MAX_SAFE_INTEGER }, 'whole number, 1 or more'],
    [{ type: 'integer', minimum: 0, maximum: 3 }, 'whole number, 0 to 3'],
    [{ type: 'number' }, 'number'],
    [{ type: 'boolean' }, 'true or false'],
    [
      { type: 'array', minItems: 1, maxItems: 12, items: { type: 'string' } },
      'list, 1 to 12 of text',
    ],
    [{ type: 'string', const: 'ok' }, 'ok'],
    [{ type: 'object', properties: {} }, 'object'],
    [{}, 'anything'],
  ])('says %j as %s', (schema, words) => {
    const said = typeWords(schema).map((word) =>
      typeof word === 'string' ? word : `<${word.shape}>`,
    );
    expect(said.join('')).toBe(words);
  });
});
