import { describe, expect, it } from 'vitest';
import { troubleOf } from '@/lib/store/trouble-of';

const coded = (code: string, message = 'x') => Object.assign(new Error(message), { code });

describe('troubleOf', () => {
  it.each([
    ['SQLite, no room', coded('SQLITE_FULL', 'database or disk is full'), 'disk-full'],
    ['SQLite, a write that failed', coded('SQLITE_IOERR_WRITE'), 'disk-full'],
    ['PostgreSQL, no room', coded('53100'), 'disk-full'],
    ['SQLite, another writer', coded('SQLITE_BUSY'), 'database-busy'],
    ['PostgreSQL, a lock waited for too long', coded('55P03'), 'database-busy'],
    ['PostgreSQL, too many clients', coded('53300'), 'database-busy'],
    ['Prisma, no transaction to be had', coded('P2028'), 'database-busy'],
    [
      'Prisma, SQLite locked by another',
      coded('P1008', 'Operation has timed out'),
      'database-busy',
    ],
    ['nobody listens', coded('ECONNREFUSED'), 'database-away'],
    ['PostgreSQL, told to stop', coded('57P01'), 'database-away'],
    [
      'PostgreSQL, closed',
      coded('55000', 'database "x" is not currently accepting connections'),
      'database-away',
    ],
    ['a connection cut', new Error('Connection terminated unexpectedly'), 'database-away'],
    ['SQLite, no such folder', coded('SQLITE_CANTOPEN'), 'database-away'],
  ])('knows %s', (_, error, trouble) => {
    expect(troubleOf(error)).toBe(trouble);
    expect(troubleOf(new Error('outer', { cause: error }))).toBe(trouble);
    const wrapped = Object.assign(new Error('P2010'), {
      meta: { driverAdapterError: { cause: error } },
    });
    expect(troubleOf(wrapped)).toBe(trouble);
    expect(troubleOf(new AggregateError([error]))).toBe(trouble);
  });

  it.each([
    ['a mistake in the program', new TypeError('x is not a function')],
    ['a broken constraint', coded('SQLITE_CONSTRAINT_FOREIGNKEY')],
    ['a wrong statement', coded('42601')],
    ['no error at all', undefined],
    ['text', 'database'],
  ])('does not excuse %s', (_, error) => {
    expect(troubleOf(error)).toBeUndefined();
  });
});
