import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { textWidth } from '@/app/ui/strip/text-width';

// The font itself is the source: advances of the `hmtx` table through the `cmap` of the packed file.
const fontOf = (weight: 400 | 700) => {
  const file = createRequire(import.meta.url).resolve(
    `@fontsource/b612/files/b612-latin-${weight}-normal.woff`,
  );
  return advancesOf(readFileSync(file));
};
const written =
  'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 .,:;+-/()=?!%&#$@<>"\'±°µ×\u2212';

describe('textWidth', () => {
  it.each([400, 700] as const)('has the advances of B612 %i, character by character', (weight) => {
    const advanceOf = fontOf(weight);
    for (const character of written) {
      // A thousandth of an em: the table keeps whole thousandths.
      expect([character, textWidth({ text: character, sizePx: 1000 })]).toEqual([
        character,
        Math.round(advanceOf(character)),
      ]);
    }
  });

  it('gives every digit 0.65 em, so that figures stand in columns', () => {
    for (const digit of '0123456789') {
      expect(textWidth({ text: digit, sizePx: 20 })).toBe(13);
    }
  });

  it('adds up: five digits and a point at 13 px are 46.15 px', () => {
    expect(textWidth({ text: '18.000', sizePx: 13 })).toBeCloseTo(46.15, 10);
  });

  it('takes a character it does not know to be as wide as a digit', () => {
    expect(textWidth({ text: '\u4e2d', sizePx: 100 })).toBe(65);
  });
});

/** Advance of a character in thousandths of an em. WOFF 1.0 (W3C 2012), OpenType cmap format 4. */
function advancesOf(woff: Buffer): (character: string) => number {
  const table = (tag: string): Buffer => {
    for (let i = 0; i < woff.readUInt16BE(12); i += 1) {
      const entry = 44 + 20 * i;
      if (woff.toString('latin1', entry, entry + 4) !== tag) continue;
      const [offset, packed, whole] = [4, 8, 12].map((at) => woff.readUInt32BE(entry + at));
      const bytes = woff.subarray(offset!, offset! + packed!);
      return packed! < whole! ? inflateSync(bytes) : bytes;
    }
    throw new Error(`no ${tag} in the font`);
  };
  const unitsPerEm = table('head').readUInt16BE(18);
  const metricCount = table('hhea').readUInt16BE(34);
  const hmtx = table('hmtx');
  const glyphOf = glyphs(table('cmap'));
  return (character) => {
    const glyph = Math.min(glyphOf(character.codePointAt(0)!), metricCount - 1);
    return (1000 * hmtx.readUInt16BE(4 * glyph)) / unitsPerEm;
  };
}

function glyphs(cmap: Buffer): (codePoint: number) => number {
  const starts = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) =>
    cmap.readUInt32BE(8 + 8 * i),
  );
  const start = starts.find((at) => cmap.readUInt16BE(at) === 4)!;
  const segments = cmap.readUInt16BE(start + 6) / 2;
  const word = (list: number, i: number) =>
    cmap.readUInt16BE(start + 14 + list * 2 * segments + (list > 0 ? 2 : 0) + 2 * i);
  return (codePoint) => {
    for (let i = 0; i < segments; i += 1) {
      if (codePoint > word(0, i)) continue;
      const [from, delta, rangeOffset] = [word(1, i), word(2, i), word(3, i)];
      if (codePoint < from) break;
      if (rangeOffset === 0) return (codePoint + delta) & 0xffff;
      const rangeAt = start + 16 + 6 * segments + 2 * i;
      const glyph = cmap.readUInt16BE(rangeAt + rangeOffset + 2 * (codePoint - from));
      if (glyph !== 0) return (glyph + delta) & 0xffff;
      break;
    }
    throw new Error(`no glyph for U+${codePoint.toString(16)}`);
  };
}
