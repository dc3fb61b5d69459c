import { describe, expect, it } from 'vitest';
import { isOwnHost } from '@/lib/command/own-host.mjs';

describe('isOwnHost', () => {
  it.each(['localhost', 'LOCALHOST:4180', '127.0.0.1', '127.0.0.1:1', '[::1]', '[::1]:65535'])(
    'knows %s for this machine',
    (host) => expect(isOwnHost(host)).toBe(true),
  );

  it.each([
    undefined,
    '',
    'shed.lan',
    'localhost.example',
    'example-localhost',
    '127.0.0.1.example',
    '127.0.0.1:80:80',
    'localhost:',
    'localhost:4180@example',
    '0.0.0.0',
    '::1',
    '192.168.1.5:4180',
  ])('does not take %j for this machine', (host) => expect(isOwnHost(host)).toBe(false));
});
