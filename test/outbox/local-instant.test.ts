import { describe, expect, it } from 'vitest';
import { localInstant } from '@/lib/outbox/local-instant';
import { Instant } from '@/lib/schema/common';

describe('localInstant', () => {
  // By hand: local clock reading = UTC + offset (RFC 3339, 4.2).
  it.each([
    [0, 0, '1970-01-01T00:00:00.000+00:00'],
    [0, 120, '1970-01-01T02:00:00.000+02:00'],
    [0, -210, '1969-12-31T20:30:00.000-03:30'],
    [1_764_061_200_123, 345, '2025-11-25T14:45:00.123+05:45'],
  ])('writes %d ms at %d minutes as %s', (atMs, offsetMin, text) => {
    expect(localInstant(atMs, offsetMin)).toBe(text);
    expect(Date.parse(text)).toBe(atMs);
    expect(Instant.parse(text)).toBe(text);
  });
});
