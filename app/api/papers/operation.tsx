import type { openApi } from '@/lib/http/open-api';
import styles from './papers.module.css';
import { FieldTable, fieldsOf, TypeLine } from './shape-table';
import type { Schema } from './type-words';

type Paths = NonNullable<ReturnType<typeof openApi>['paths']>;
export type Described = NonNullable<Paths[string]['get']>;

type Props = { method: string; path: string; operation: Described };
type Content = Record<string, { schema?: Schema }>;

/** One method of one address: what it takes and how it answers. */
export function Operation({ method, path, operation }: Props) {
  const { summary, description, parameters = [], requestBody, responses = {} } = operation;
  const title = `${method.toUpperCase()} /api/v1${path}`;
  const inputs = (
    parameters as { name: string; in: string; schema: Schema; required?: boolean }[]
  ).map(({ name, in: where, schema, required }) => ({
    name,
    where,
    schema,
    required: required === true,
  }));
  const body = contentOf(requestBody);
  const answers = responses as Record<string, AnswerOf>;
  return (
    <article className={styles.operation}>
      <h3>
        <code>{title}</code>
      </h3>
      <p>
        {summary}.{description === undefined ? '' : ` ${description.replaceAll('`', '')}`}
      </p>
      {inputs.length > 0 && <FieldTable caption={`What ${title} is asked with`} fields={inputs} />}
      {body?.schema !== undefined && (
        <>
          <p>
            Body: <TypeLine schema={body.schema} />
          </p>
          {fieldsOf(body.schema).length > 0 && (
            <FieldTable caption={`Body of ${title}`} fields={fieldsOf(body.schema)} />
          )}
        </>
      )}
      <ul className={styles.answers}>
        {Object.entries(answers)
          .filter(([status]) => status.startsWith('2'))
          .map(([status, response]) => (
            <Answer key={status} status={status} response={response} />
          ))}
      </ul>
      <p className={styles.problems}>Problems: {problemLine(answers)}</p>
    </article>
  );
}

type AnswerOf = { description: string; content?: Content };

function Answer({ status, response }: { status: string; response: AnswerOf }) {
  const [type, content] = Object.entries(response.content ?? {})[0] ?? [];
  return (
    <li>
      <b>{status}</b> {response.description}{' '}
      {content?.schema !== undefined && <TypeLine schema={content.schema} />}
      {type !== undefined && !type.includes('json') && ` (${type})`}
    </li>
  );
}

/** The codes that come with each status; what they mean stands once, under Problems. */
function problemLine(responses: Record<string, AnswerOf>): string {
  return Object.entries(responses)
    .filter(([status]) => !status.startsWith('2'))
    .map(([status, { description }]) => {
      const codes = [...description.matchAll(/`([^`]+)`/g)].map(([, code]) => code);
      return `${status} ${codes.join(', ')}`;
    })
    .join('; ');
}

function contentOf(requestBody: unknown): { schema?: Schema } | undefined {
  return Object.values((requestBody as { content?: Content } | undefined)?.content ?? {})[0];
}
