/**
 * A moment as RFC 3339 text in local time with its offset, to the millisecond.
 *
 * @example localInstant(0, 120) // '1970-01-01T02:00:00.000+02:00'
 */
export function localInstant(atMs: number, offsetMin: number): string {
  const local = new Date(atMs + offsetMin * 60_000).toISOString().slice(0, -1);
  const minutes = Math.abs(offsetMin);
  return `${local}${offsetMin < 0 ? '-' : '+'}${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
}

const pad = (part: number) => String(part).padStart(2, '0');
