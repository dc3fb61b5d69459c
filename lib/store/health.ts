import { store } from './client';
import { lastSeq } from './last-seq';

export type Health = { database: 'sqlite' | 'postgresql'; seq: number };

/** Touches the database. @throws where it does not answer */
export async function health(): Promise<Health> {
  const { engine } = await store();
  return { database: engine, seq: await lastSeq() };
}
