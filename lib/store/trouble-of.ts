/** What is wrong with the database itself, where that is known; nothing was kept. */
export type Trouble = 'disk-full' | 'database-busy' | 'database-away';

/**
 * Recognises the errors of both drivers that say that the database cannot keep anything now. They come
 * wrapped: the driver's own error is somewhere down the chain of causes.
 *
 * Sources: the result codes of SQLite (sqlite.org/rescode.html), appendix A of the PostgreSQL manual, the
 * system errors of Node, Prisma's error reference (P1001, P1008, P2024, P2028).
 */
export function troubleOf(error: unknown): Trouble | undefined {
  for (const code of codesOf(error)) {
    const found = known.find(([pattern]) => pattern.test(code));
    if (found !== undefined) return found[1];
  }
  return undefined;
}

const known: readonly (readonly [RegExp, Trouble])[] = [
  [/^SQLITE_FULL|^SQLITE_IOERR_WRITE|^53100$|^ENOSPC$|database or disk is full/, 'disk-full'],
  [/^SQLITE_BUSY|^SQLITE_LOCKED|^55P03$|^40P01$|^53300$|^P1008$|^P2024$|^P2028$/, 'database-busy'],
  [/^SQLITE_IOERR|^SQLITE_CANTOPEN|^SQLITE_READONLY/, 'database-away'],
  [/^08\d\d\d$|^57P0[1-3]$|^ECONN|^ENOTFOUND$|^ETIMEDOUT$|^EPIPE$|^P1001$/, 'database-away'],
  [
    /Connection terminated|timeout exceeded when trying|not currently accepting connections/,
    'database-away',
  ],
];

/** Codes and messages of an error and of what caused it, outermost first. */
function codesOf(error: unknown): string[] {
  const found: string[] = [];
  let open: unknown[] = [error];
  for (let depth = 0; depth < 6 && open.length > 0; depth += 1) {
    open = open.flatMap((one) => {
      if (typeof one !== 'object' || one === null) return [];
      const { code, originalCode, message, cause, meta } = one as Record<string, unknown>;
      found.push(...[code, originalCode, message].filter((text) => typeof text === 'string'));
      const errors = (one as { errors?: unknown }).errors;
      return [
        cause,
        meta,
        (meta as Record<string, unknown>)?.['driverAdapterError'],
        errors,
      ].flat();
    });
  }
  return found;
}
