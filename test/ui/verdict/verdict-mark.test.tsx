import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { VerdictLine } from '@/app/ui/verdict/verdict-line';
import { VerdictMark } from '@/app/ui/verdict/verdict-mark';
import type { VerdictState } from '@/lib/text/verdict';

const states: VerdictState[] = [
  'inside',
  'near',
  'unsure',
  'out',
  'to cut',
  'held',
  'struck',
  'to make',
  'none',
];
const drawn = (state: VerdictState, side: 'top' | 'bottom' | null = null) =>
  renderToStaticMarkup(<VerdictMark state={state} side={side} />).replace(/class="[^"]*"/g, '');

describe('VerdictMark', () => {
  it('tells every verdict by its shape alone, but for the two kinds of "still to make"', () => {
    const shapes = states.filter((state) => state !== 'to cut').map((state) => drawn(state));
    // Grey posts are all that "none" has: with the classes taken off it is still unlike the others.
    expect(new Set(shapes).size).toBe(shapes.length);
    expect(drawn('to cut')).toBe(drawn('to make'));
  });

  it('stands small on the left and large on the right', () => {
    for (const state of ['near', 'out', 'unsure'] as const) {
      expect(drawn(state, 'bottom')).toContain('matrix(-1 0 0 1 32 0)');
      expect(drawn(state, 'top')).not.toContain('matrix');
    }
    const block = /x="([\d.]+)" y="3" width="6" height="10"/.exec(drawn('out', 'top'))!;
    expect(Number(block[1])).toBeGreaterThan(25);
  });

  it('is 32 by 16, larger on a phone and a tablet', () => {
    expect(drawn('inside')).toContain('width="32" height="16"');
    const tablet = renderToStaticMarkup(<VerdictMark state="inside" scale={1.7} />);
    expect(tablet).toContain('width="54.4" height="27.2"');
  });

  it('says its word in a dense table and is silent where the word stands beside it', () => {
    const named = renderToStaticMarkup(<VerdictMark state="near" side="top" word="Near the top" />);
    expect(named).toContain('role="img" aria-label="Near the top"');
    expect(drawn('inside')).toContain('aria-hidden="true"');
  });
});

describe('VerdictLine', () => {
  it('has the mark, the word and the place', () => {
    const html = renderToStaticMarkup(
      <VerdictLine
        unit="mm"
        decimal="."
        resolutionPm={1_000_000}
        verdict={{ state: 'out', side: 'top', beyondPm: 3_000_000 }}
        where="middle, across B"
      />,
    );
    expect(html.replace(/<svg.*<\/svg>/, '').replace(/<[^>]+>/g, '|')).toBe(
      '||Out, 0.003 large||middle, across B||',
    );
  });
});
