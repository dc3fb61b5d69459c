import { randomBytes } from 'node:crypto';

let last = 0n;

/**
 * A UUID, version 7 (RFC 9562, 5.7): time first, so that rows made together lie together. Within this
 * process each one is greater than the one before (6.2, method 2: the random part counts on within a
 * millisecond, and a clock set back is not followed).
 */
export function uuidv7(): string {
  const random = BigInt(`0x${randomBytes(10).toString('hex')}`) & ((1n << 73n) - 1n);
  const now = (BigInt(Date.now()) << 74n) | random;
  last = now > last ? now : last + 1n + (random & 0xffffffffn);
  const time = digits(last >> 74n, 12);
  const a = digits((last >> 62n) & 0xfffn, 3);
  const b = digits((2n << 62n) | (last & ((1n << 62n) - 1n)), 16);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${a}-${b.slice(0, 4)}-${b.slice(4)}`;
}

function digits(value: bigint, length: number): string {
  return value.toString(16).padStart(length, '0');
}
