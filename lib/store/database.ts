import type { PrismaClient } from '@/generated/sqlite/client/client';

export type StoreClient = PrismaClient;
export type StoreTransaction = Parameters<Parameters<StoreClient['$transaction']>[0]>[0];

/** What goes into a plain statement; it comes out the same, or as text where the statement says so. */
export type Value = string | number | null;

/** The open notebook, on either engine. */
export type Database = {
  engine: 'sqlite' | 'postgresql';

  /** Typed, for everything that is edited. */
  prisma: StoreClient;

  /**
   * Runs one plain statement that only looks. Placeholders are $1, $2, ... on both engines; a row is an
   * array of its columns; 64-bit integers come as numbers.
   */
  read(sql: string, values?: readonly Value[]): Promise<unknown[][]>;

  /**
   * Runs one plain statement that keeps something; when it answers, what it kept is on the disk.
   * Never call it while a transaction of this process is open and waits for the answer.
   */
  write(sql: string, values?: readonly Value[]): Promise<unknown[][]>;

  /** How each open connection is set, by the engine's own account. */
  settings(): Promise<Record<string, unknown>[]>;

  close(): Promise<void>;
};
