/** Where ids get their time and their chance from; handed in by tests. */
export type IdSource = {
  nowMs: () => number;
  randomise: (bytes: Uint8Array<ArrayBuffer>) => void;
};

/** A clock set back further than this is followed; a smaller step is ridden out so that ids keep rising. */
const setBackMs = 10_000;

/**
 * A new id: a UUID of version 7 (RFC 9562, 5.7), whose text sorts by the time it was made.
 *
 * Ids of one page rise strictly, also within one millisecond: the twelve bits after the version start at
 * random and count up (RFC 9562, 6.2, method 1); when they run over, the next millisecond is borrowed.
 * Needs only `crypto.getRandomValues`, so it works on a page served over plain http.
 *
 * Limits: two pages may make ids of one millisecond in any order. The time inside an id is the device's
 * own and decides nothing.
 *
 * @example uuidv7() // '017f22e2-79b0-7cc3-98c4-dc0c0c07398f'
 */
export const uuidv7 = createIds({
  nowMs: () => Date.now(),
  randomise: (bytes) => crypto.getRandomValues(bytes),
});

/** The same with a clock and a source of chance of one's own. */
export function createIds(source: IdSource): () => string {
  let lastMs = -1;
  let count = 0;
  return () => {
    const bytes = new Uint8Array(16);
    source.randomise(bytes);
    const nowMs = source.nowMs();
    if (nowMs > lastMs || nowMs < lastMs - setBackMs) {
      lastMs = nowMs;
      count = ((bytes[6]! & 0x0f) << 8) | bytes[7]!;
    } else if (count < 0xfff) {
      count += 1;
    } else {
      lastMs += 1;
      count = 0;
    }
    for (let i = 0; i < 6; i += 1) bytes[i] = Math.floor(lastMs / 256 ** (5 - i)) % 256;
    bytes[6] = 0x70 | (count >> 8);
    bytes[7] = count & 0xff;
    bytes[8] = 0x80 | (bytes[8]! & 0x3f);
    return asText(bytes);
  };
}

function asText(bytes: Uint8Array): string {
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
