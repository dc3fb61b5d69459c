/** What no text may contain: the NUL character, and half of a character that is written as two. */
const stray = /[\0\p{Surrogate}]/u;

type Place = { value: object; key: string; above: Place | null };

/**
 * Where a value read from JSON holds a character that no database keeps as it is, as a path with dots, or
 * undefined where it holds none. JSON can carry both; PostgreSQL takes neither, SQLite changes the second.
 * Names of fields are not looked at: the schemas know them.
 *
 * However deep the value is nested, it is walked without recursion.
 *
 * @example
 * strayCharacter({ entries: ['a', '\0'] }); // 'entries.1'
 */
export function strayCharacter(value: unknown): string | undefined {
  const open: Place[] = [{ value: { '': value }, key: '', above: null }];
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    const here = place.value as Record<string, unknown>;
    for (const key in here) {
      const inner = here[key];
      if (typeof inner === 'string') {
        if (stray.test(inner)) return pathTo({ value: here, key, above: place });
      } else if (typeof inner === 'object' && inner !== null) {
        open.push({ value: inner, key, above: place });
      }
    }
  }
  return undefined;
}

function pathTo(place: Place): string {
  const keys: string[] = [];
  for (let at = place; at.above !== null; at = at.above) keys.unshift(at.key);
  return keys.slice(1, 9).join('.');
}
