import type { Metadata } from 'next';
import { openApi } from '@/lib/http/open-api';
import { problemCodes } from '@/lib/http/problem-codes';
import { refusals } from '@/lib/store/refused';
import { Operation, type Described } from './papers/operation';
import styles from './papers/papers.module.css';
import { FieldTable, fieldsOf, TypeLine } from './papers/shape-table';
import type { Schema } from './papers/type-words';

export const metadata: Metadata = { title: 'The API' };

const methods = ['get', 'post', 'patch'] as const;

/** The API in words, from the same document that programs read. */
export default function ApiPage() {
  const { info, paths = {}, components } = openApi();
  return (
    <main className={styles.page}>
      <h1>The API of {info.title}</h1>
      {info.description?.split('\n\n').map((line) => (
        <p key={line}>{line.replaceAll('`', '')}</p>
      ))}
      <p>
        For programs:{' '}
        {/* oxlint-disable-next-line nextjs/no-html-link-for-pages -- a document, not a page */}
        <a href="/api/v1/openapi.json">openapi.json</a> (OpenAPI 3.1).
      </p>
      <h2>Addresses</h2>
      {Object.entries(paths).flatMap(([path, item]) =>
        methods.map((method) => {
          const operation = item[method] as Described | undefined;
          if (operation === undefined) return null;
          return (
            <Operation key={method + path} method={method} path={path} operation={operation} />
          );
        }),
      )}
      <h2>Problems</h2>
      <ul className={styles.answers}>
        {Object.entries(problemCodes).map(([code, [status, title]]) => (
          <li key={code}>
            <b>{status}</b> <code>{code}</code> {title}
          </li>
        ))}
        {Object.entries(refusals).map(([code, says]) => (
          <li key={`refused ${code}`}>
            <b>422</b> <code>{code}</code> {says}
          </li>
        ))}
      </ul>
      <h2>Shapes</h2>
      {Object.entries(components?.schemas ?? {}).map(([name, schema]) => (
        <Shape key={name} name={name} schema={schema as Schema} />
      ))}
    </main>
  );
}

function Shape({ name, schema }: { name: string; schema: Schema }) {
  const { description, anyOf } = schema as { description?: string; anyOf?: Schema[] };
  const forms = (anyOf ?? [schema]).filter((form) => fieldsOf(form).length > 0);
  return (
    <section className={styles.shape} id={name}>
      <h3>{name}</h3>
      {description !== undefined && <p>{description}</p>}
      {forms.map((form, i) => (
        <FieldTable key={i} caption={`Fields of ${name}`} fields={fieldsOf(form)} />
      ))}
      {forms.length === 0 && (
        <p>
          <TypeLine schema={schema} />
        </p>
      )}
    </section>
  );
}
