/** How the text in the entry line arrived. */
export type EntryBurst = { characters: number; longestGapMs: number; lastAtMs: number };

/** No hand keeps this pace over a whole number and its end; gauges type at 5 to 100 ms. Common practice, no source. */
const gaugeGapMs = 200;

export const noBurst: EntryBurst = { characters: 0, longestGapMs: 0, lastAtMs: -Infinity };

/** One more character at `atMs`; the first of a text starts the pace anew. */
export function withCharacter(burst: EntryBurst, atMs: number): EntryBurst {
  const gapMs = burst.characters === 0 ? 0 : atMs - burst.lastAtMs;
  return {
    characters: burst.characters + 1,
    longestGapMs: Math.max(burst.longestGapMs, gapMs),
    lastAtMs: atMs,
  };
}

/**
 * Whether a Tab at `atMs` ends a gauge's message rather than being a person who leaves the box.
 *
 * A gauge sends it at its own pace, right behind at least three characters none of which lagged. A
 * person who is taken for a gauge has logged what stood there, sees it, and is out at the next Tab.
 */
export function isGaugeTab(burst: EntryBurst, atMs: number): boolean {
  return isAtPace(burst, gaugeGapMs + 1) && atMs - burst.lastAtMs <= gaugeGapMs;
}

/** Whether at least three characters came, each within `belowMs` of the one before it. */
export function isAtPace(burst: EntryBurst, belowMs: number): boolean {
  return burst.characters >= 3 && burst.longestGapMs < belowMs;
}
