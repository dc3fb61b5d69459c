/** What no text may contain: the NUL character, and half of a character that is written as two. */
const stray = /[\0\p{Surrogate}]/u;

type Place = { value: unknown; key: string; above: Place | null };

/**
 * Where a value read from JSON holds a character that no database keeps as it is, as a path with dots, or
 * undefined where it holds none. JSON can carry both; PostgreSQL takes neither, SQLite changes the second.
 *
 * However deep the value is nested, it is walked without recursion.
 *
 * @example
 * strayCharacter({ entries: ['a', '\0'] }); // 'entries.1'
 */
export function strayCharacter(value: unknown): string | undefined {
  const open: Place[] = [{ value, key: '', above: null }];
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    const { value: here } = place;
    if (typeof here === 'string') {
      if (stray.test(here)) return pathTo(place);
    } else if (typeof here === 'object' && here !== null) {
      for (const [key, inner] of Object.entries(here)) {
        if (stray.test(key)) return pathTo(place);
        open.push({ value: inner, key, above: place });
      }
    }
  }
  return undefined;
}

function pathTo(place: Place): string {
  const keys: string[] = [];
  for (let at: Place = place; at.above !== null; at = at.above) keys.unshift(at.key);
  return keys.slice(0, 8).join('.');
}
