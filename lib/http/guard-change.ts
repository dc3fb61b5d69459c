import { problem } from './problem';

/**
 * Refuses a change that a page of another site might have had a browser make; undefined lets it through.
 *
 * Every browser names in `Origin` the site whose page asks, and none lets a page change it: it has to be
 * the host that is asked. `Sec-Fetch-Site` is looked at too where there is one (plain http on a network
 * name has none). Another program says what a page of this server would: `Origin: http://host:port`. A
 * form cannot send JSON, so the content type is the third lock.
 */
export function guardChange({ headers }: Request): Response | undefined {
  const site = headers.get('sec-fetch-site');
  if (site !== null && site !== 'same-origin') return problem('other-site');
  const origin = headers.get('origin');
  if (origin === null) return problem('origin-missing');
  if (hostOf(origin) !== headers.get('host')?.toLowerCase()) return problem('other-site');
  const type = headers.get('content-type')?.split(';')[0]?.trim().toLowerCase();
  const encoding = headers.get('content-encoding') ?? 'identity';
  return type === 'application/json' && encoding === 'identity'
    ? undefined
    : problem('content-type');
}

/** Host and port of an origin; `null`, which a sandboxed page sends, has none. */
function hostOf(origin: string): string | undefined {
  return /^https?:\/\/([^/?#@]+)$/.exec(origin.toLowerCase())?.[1];
}
