/** A device clock further off than this is told of. */
export const skewTellsMs = 2 * 60_000;

/** Longer than any request may take: the device slept in between and the two times do not belong together. */
const exchangeMsMax = 30_000;

/**
 * How far the device's clock is ahead of the server's, ms; negative is behind; null when it cannot be said.
 *
 * The server's time is the latest `receivedAt` of the rows it has just kept, else the `Date` header, which is
 * cut to whole seconds (half a second is added). It is held against the middle of the exchange, so the answer
 * is good to half of how long the exchange took.
 */
export function clockSkewMs(exchange: {
  sentMs: number;
  answeredMs: number;
  dateHeader: string | null;
  receivedAt: readonly string[];
}): number | null {
  const { sentMs, answeredMs, dateHeader, receivedAt } = exchange;
  if (answeredMs < sentMs || answeredMs - sentMs > exchangeMsMax) return null;
  const received = receivedAt.map((at) => Date.parse(at)).filter(Number.isFinite);
  const serverMs = received.length > 0 ? Math.max(...received) : Date.parse(dateHeader ?? '') + 500;
  return Number.isFinite(serverMs) ? Math.round((sentMs + answeredMs) / 2 - serverMs) : null;
}
