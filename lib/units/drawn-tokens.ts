/** One piece of a size as a drawing gives it. */
export type DrawnToken =
  | { kind: 'number'; text: string; at: number }
  | { kind: 'word'; text: string; at: number }
  | { kind: 'sign'; sign: '+' | '-' | '\u00b1'; at: number }
  | { kind: 'slash'; at: number }
  | { kind: 'to'; at: number };

/**
 * Cuts a drawn size into numbers, signs, words and separators, or names the place it cannot read.
 *
 * A slash between two plain whole numbers belongs to a fraction; any other slash separates.
 */
export function drawnTokens(text: string): DrawnToken[] | { at: number } {
  const tokens: DrawnToken[] = [];
  let at = 0;
  while (at < text.length) {
    const rest = text.slice(at);
    const blank = /^[\s()]+/.exec(rest)?.[0];
    if (blank !== undefined) {
      at += blank.length;
      continue;
    }
    const found = tokenOf(rest, at);
    if (found === undefined) return { at };
    tokens.push(found.token);
    at += found.length;
  }
  return tokens;
}

const glyphs = '\u00bc-\u00be\u2153-\u215e';
const number = new RegExp(
  [
    // 1 1/4, 1-1/4, 5/32, but not 18/0 and not 18.018/18.000
    String.raw`^(?:\d+(?:\s+|-))?\d+\s*[/\u2044]\s*[1-9]\d*(?![\d.,])`,
    String.raw`^\d*\s*[${glyphs}]`,
    String.raw`^\d+(?:[.,]\d+)*(?:[.,](?![.,\d]))?`,
    String.raw`^[.,]\d+`,
  ].join('|'),
);

function tokenOf(rest: string, at: number): { token: DrawnToken; length: number } | undefined {
  const to = /^(?:to\b|\.{2,3}|\u2026)/i.exec(rest)?.[0];
  if (to !== undefined) return { token: { kind: 'to', at }, length: to.length };
  const figures = number.exec(rest)?.[0];
  if (figures !== undefined) {
    return { token: { kind: 'number', text: figures, at }, length: figures.length };
  }
  const both = /^(?:\u00b1|\+\s?\/?\s?[-\u2212\u2013](?=\s*[\d.,]))/.exec(rest)?.[0];
  if (both !== undefined) {
    return { token: { kind: 'sign', sign: '\u00b1', at }, length: both.length };
  }
  if (rest[0] === '+') return { token: { kind: 'sign', sign: '+', at }, length: 1 };
  if (/^[-\u2212\u2013]/.test(rest)) return { token: { kind: 'sign', sign: '-', at }, length: 1 };
  if (rest[0] === '/') return { token: { kind: 'slash', at }, length: 1 };
  const word = /^(?:[A-Za-z\u00b5\u03bc]+\.?|["\u2033\u201d]|'')/.exec(rest)?.[0];
  if (word === undefined) return undefined;
  return { token: { kind: 'word', text: word, at }, length: word.length };
}
