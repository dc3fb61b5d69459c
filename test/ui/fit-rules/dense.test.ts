import { describe, expect, it } from 'vitest';
import { denseFrom } from '@/app/ui/fit-rules/dense';
import type { FitRulesData } from '@/app/ui/fit-rules/fit-rules-data';
import { fitRulesLayout } from '@/app/ui/fit-rules/fit-rules-layout';
import { textWidth } from '@/app/ui/strip/text-width';
import { denseWords } from '@/lib/text/fit-rules-words';
import { seededDraws } from '../../measure/seeded-draws';
import { fanFit } from '../gallery/fit';
import { mm } from '../gallery/strips';

const width = 1198;

/** So many pieces a side, sizes scattered by 0.003; the first pair is outside, the second unsure, the last piece alone. */
function crowd(count: number): FitRulesData {
  const { normal } = seededDraws(7);
  const side = (letter: string, middle: number) =>
    Array.from({ length: count }, (_, index) => ({
      mark: `${letter}${index + 1}`,
      sizePm: Math.round(mm(middle) + mm(0.003) * normal()),
      expandedPm: mm(0.001),
    }));
  const internal = side('L', 18.009);
  const external = side('P', 17.999);
  return {
    ...fanFit,
    internal: { ...fanFit.internal, pieces: internal },
    external: { ...fanFit.external, pieces: external },
    ties: internal.slice(0, -1).map(({ mark, sizePm }, index) => ({
      internal: mark,
      external: external[index]!.mark,
      clearancePm: sizePm - external[index]!.sizePm,
      state: index === 0 ? 'out' : index === 1 ? 'unsure' : 'inside',
    })),
    toMake: [],
  };
}

describe('two rules with two hundred pieces a side', () => {
  const data = crowd(200);
  const { shapes, scale, marked } = fitRulesLayout(data, width);
  const of = (...roles: string[]) => shapes.filter(({ role }) => roles.includes(role));
  const [upper, lower] = of('baseline').map((line) => (line.kind === 'line' ? line.y1 : 0));

  it('draws every piece once, at its own size to the nearest pixel, and none besides', () => {
    const blocks = of('grain').map((block) => (block.kind === 'rect' ? block : undefined)!);
    expect(blocks).toHaveLength(400);
    const middles = (y: number) =>
      blocks
        .filter((block) => (y === upper ? block.y < upper! : block.y > upper!))
        .map((block) => block.x + block.width / 2)
        .sort((a, b) => a - b);
    const sizes = (pieces: typeof data.internal.pieces, xOf: (pm: number) => number) =>
      pieces.map(({ sizePm }) => xOf(sizePm)).sort((a, b) => a - b);
    const { internalX, externalX } = scale as never as Record<string, (pm: number) => number>;
    const wanted = {
      above: sizes(data.internal.pieces, internalX!),
      below: sizes(data.external.pieces, externalX!),
    };
    middles(upper!).forEach((x, index) => expect(Math.abs(x - wanted.above[index]!)).toBeLessThanOrEqual(1)); // prettier-ignore
    middles(lower!).forEach((x, index) => expect(Math.abs(x - wanted.below[index]!)).toBeLessThanOrEqual(1)); // prettier-ignore
    expect(of('upright', 'bar')).toEqual([]);
  });

  it('stacks blocks that coincide within the band, none over another', () => {
    const blocks = of('grain').map((block) => (block.kind === 'rect' ? block : undefined)!);
    for (const { y, height } of blocks) {
      const isAbove = y < upper!;
      expect(isAbove ? y >= upper! - 34 : y + height <= lower! + 34).toBe(true);
    }
    const places = blocks.map(({ x, y }) => `${x} ${y.toFixed(3)}`);
    expect(new Set(places).size).toBe(400);
  });

  it('ties every pair, those that are outside or unsure apart from the rest', () => {
    expect(of('tieThin')).toHaveLength(197);
    expect(of('tieOutThin')).toHaveLength(1);
    expect(of('tieUnsureThin')).toHaveLength(1);
    expect(of('clearance', 'clearanceOut', 'clearanceUnsure')).toEqual([]);
  });

  it.each([1198, 690])(
    'marks what needs a look first, and lets no words touch, at %i wide',
    (px) => {
      const drawn = fitRulesLayout(data, px);
      const texts = drawn.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
      const marks = texts.filter(({ role }) => role === 'mark').map(({ text }) => text);
      expect(marks).toEqual(expect.arrayContaining(['L1', 'P1', 'L2', 'P2', 'L200', 'P200']));
      expect(marks.length).toBeLessThanOrEqual(24);
      expect(drawn.marked).toBe(marks.length);
      const boxes = texts.map(({ x, y, text, anchor, role }) => {
        const sizePx = role === 'mark' ? 17 : role === 'title' ? 16 : 13;
        const wide = textWidth({ text, sizePx });
        const left = anchor === 'middle' ? x - wide / 2 : x;
        return { text, left, right: left + wide, top: y - 0.7 * sizePx, bottom: y };
      });
      const touching = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter(
            (b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
          )
          .map((b) => `${a.text} ${b.text}`),
      );
      expect(touching).toEqual([]);
    },
  );

  it('draws pieces to make hollow', () => {
    const target = {
      internal: 'L200',
      external: 'P201',
      targetPm: mm(18),
      noLargerPm: mm(18.001),
      noSmallerPm: mm(17.999),
    };
    const drawn = fitRulesLayout({ ...data, toMake: [target] }, width).shapes;
    expect(drawn.filter(({ role }) => role === 'grainToMake')).toHaveLength(1);
    expect(drawn.filter(({ role }) => role === 'toMakeLineThin')).toHaveLength(1);
  });

  it('says what a block is, how well it is known and how many carry their mark', () => {
    expect(marked).toBeGreaterThan(5);
    const facts = { pieces: 400, toMake: 0, marked: 8, leastPm: mm(0.001), mostPm: mm(0.001), resolutionPm: mm(0.001) }; // prettier-ignore
    expect(denseWords(facts, data)).toBe(
      'Each block is a piece at its own size, known to ± 0.001. 8 of 400 carry their mark: without a partner, outside or unsure, smallest and largest. The table names all.',
    );
    expect(denseWords({ ...facts, toMake: 3, mostPm: mm(0.002) }, data)).toContain(
      'known to ± 0.001 to 0.002. A hollow one is to make. 8 of 403',
    );
  });
});

describe('two rules with a few more', () => {
  it('still stand each piece upright with its mark, up to forty', () => {
    const { shapes, marked } = fitRulesLayout(crowd(denseFrom - 1), width);
    expect(shapes.filter(({ role }) => role === 'upright')).toHaveLength(80);
    expect(shapes.filter(({ role }) => role === 'mark')).toHaveLength(80);
    expect(marked).toBeNull();
  });
});
