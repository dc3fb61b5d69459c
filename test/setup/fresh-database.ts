import { randomBytes } from 'node:crypto';
import { copyFileSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Client } from 'pg';
import { databaseUrl } from '@/lib/command/database-url.mjs';

/**
 * A migrated, empty notebook of its own, in the database under test. It is removed with all others
 * when the tests end.
 *
 * Needs database-template.ts as the global setup.
 *
 * @returns its DATABASE_URL
 */
export async function freshDatabase(): Promise<string> {
  const template = process.env['TEST_TEMPLATE'];
  if (template === undefined) throw new Error('freshDatabase requires database-template.ts');
  const database = databaseUrl(template);
  const name = randomBytes(6).toString('hex');
  if (database.provider === 'sqlite') {
    const folder = join(dirname(database.folder), name);
    mkdirSync(folder);
    copyFileSync(database.file, join(folder, 'fitwright.db'));
    return `file:${join(folder, 'fitwright.db')}`;
  }
  const admin = new Client({ connectionString: process.env['TEST_ADMIN'] });
  await admin.connect();
  await admin.query(`CREATE DATABASE ${database.name}_${name} TEMPLATE ${database.name}`);
  await admin.end();
  const url = new URL(template);
  url.pathname = `/${database.name}_${name}`;
  return url.href;
}
