import { Fragment } from 'react';
import styles from './papers.module.css';
import { typeWords, type Schema } from './type-words';

type Field = { name: string; schema: Schema; required: boolean; where?: string | undefined };

/** Names, kinds and meanings, one line each. */
export function FieldTable({ caption, fields }: { caption: string; fields: readonly Field[] }) {
  return (
    <table className={styles.table}>
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Takes</th>
          <th scope="col">Meaning</th>
        </tr>
      </thead>
      <tbody>
        {fields.map(({ name, schema, required, where }) => (
          <tr key={`${where} ${name}`}>
            <th scope="row">
              <code>{name}</code>
            </th>
            <td>
              <TypeLine schema={schema} />
              {required ? '' : '; may be left out'}
            </td>
            <td>{[where, meaningOf(schema)].filter(Boolean).join(': ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A type in words, with shapes as links to where they are described. */
export function TypeLine({ schema }: { schema: Schema }) {
  return (
    <>
      {typeWords(schema).map((word, i) => (
        <Fragment key={i}>
          {typeof word === 'string' ? word : <a href={`#${word.shape}`}>{word.shape}</a>}
        </Fragment>
      ))}
    </>
  );
}

/** The fields of an object's schema. */
export function fieldsOf(schema: Schema): Field[] {
  const { properties = {}, required = [] } = schema as {
    properties?: Record<string, Schema>;
    required?: string[];
  };
  return Object.entries(properties).map(([name, field]) => ({
    name,
    schema: field,
    required: required.includes(name),
  }));
}

function meaningOf(schema: Schema): string {
  return (schema as { description?: string }).description ?? '';
}
