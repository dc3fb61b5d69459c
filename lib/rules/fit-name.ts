/** The most a name may hold: lib/schema/common, Name. */
const mostUnits = 120;
const joins = [' in ', ', '];

/**
 * What a fit is called when nobody gave it a name: "Ram in barrel", and with `also` the name of
 * the bore, "Ram in barrel, front seat". Never longer than a name may be: what is too long is cut
 * at a word and ends in "…"; a short name beside a long one stays whole.
 */
export function fitName(external: string, internal: string, also?: string): string {
  const names = [external, internal.toLowerCase(), ...(also ? [also.toLowerCase()] : [])];
  const joined = names.slice(1).reduce((sum, _, index) => sum + joins[index]!.length, 0);
  const room = roomFor(
    names.map(({ length }) => length),
    mostUnits - joined,
  );
  return names.map((name, index) => `${joins[index - 1] ?? ''}${cut(name, room)}`).join('');
}

/** The longest each may be so that all together stay within `all`. */
function roomFor(lengths: readonly number[], all: number): number {
  let left = all;
  const rising = lengths.toSorted((a, b) => a - b);
  for (const [index, length] of rising.entries()) {
    const share = Math.floor(left / (rising.length - index));
    if (length > share) return share;
    left -= length;
  }
  return all;
}

function cut(name: string, room: number): string {
  if (name.length <= room) return name;
  const kept = name.slice(0, room - 1).replace(/[\uD800-\uDBFF]$/, '');
  const word = name[kept.length] === ' ' ? kept : kept.replace(/\s+\S*$/, '');
  return `${word.replace(/[\s,;]+$/, '')}…`;
}
