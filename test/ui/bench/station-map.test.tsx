import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { StationCell } from '@/app/ui/bench/station-cells';
import { StationMap } from '@/app/ui/bench/station-map';

const cell = (text: string | null, state: StationCell['state'] = 'counted'): StationCell => ({
  text,
  state: text === null ? 'empty' : state,
});
const names = (html: string) =>
  [...html.matchAll(/aria-label="([^"]*: [^"]*)"/g)].map(([, n]) => n);

describe('StationMap', () => {
  const html = renderToStaticMarkup(
    <StationMap
      kind="outside"
      stations={['Crown', 'Middle', 'Skirt']}
      directions={['A', 'B']}
      cells={[
        [cell('17.999'), cell('18.498', 'held'), cell(null)],
        [cell('17.998'), cell('18.107', 'struck'), cell(null)],
      ]}
      next={{ station: 'Skirt', direction: 'A' }}
      last={{ station: 'Crown', direction: 'B' }}
      onPick={() => {}}
    />,
  );

  it('names every place and what was read there', () => {
    expect(names(html)).toEqual([
      'Crown, across A: 17.999',
      'Middle, across A: 18.498, held',
      'Skirt, across A: not measured, next',
      'Crown, across B: 17.998',
      'Middle, across B: 18.107, struck out',
      'Skirt, across B: not measured',
    ]);
  });

  it('writes "next" in the next place and marks it as the step to take', () => {
    expect(html.match(/aria-current="step"/g)).toHaveLength(1);
    expect(html).toMatch(/aria-label="Skirt, across A: not measured, next"[^>]*>.*?>next</);
  });

  it('marks the last place', () => {
    expect(html.match(/data-last="true"/g)).toHaveLength(1);
    expect(html).toMatch(/data-last="true"[^>]*aria-label="Crown, across B/);
  });

  it('has a name for the one place of a length', () => {
    const one = renderToStaticMarkup(
      <StationMap
        kind="length"
        stations={['']}
        directions={['']}
        cells={[[cell(null)]]}
        next={null}
        last={null}
        onPick={() => {}}
      />,
    );
    expect(names(one)).toEqual(['Size: not measured']);
  });

  it('shows each of 12 by 12 places once, in banks that fit a phone', () => {
    const twelve = Array.from({ length: 12 }, (_, index) => `N${index}`);
    const big = renderToStaticMarkup(
      <StationMap
        kind="bore"
        stations={twelve}
        directions={twelve}
        cells={[]}
        next={null}
        last={null}
        onPick={() => {}}
        firstWidth={328}
      />,
    );
    expect(new Set(names(big)).size).toBe(144);
    expect(big.match(/data-kind="bore"/g)!.length).toBeGreaterThan(2);
  });

  it('says that it is too high to stand over the keys of a phone: two banks, or three rows', () => {
    const drawn = (stations: number, directions: number) =>
      renderToStaticMarkup(
        <StationMap
          kind="outside"
          stations={Array.from({ length: stations }, (_, index) => `N${index}`)}
          directions={Array.from({ length: directions }, (_, index) => `D${index}`)}
          cells={[]}
          next={null}
          last={null}
          onPick={() => {}}
          firstWidth={328}
        />,
      );
    expect(drawn(3, 2)).not.toContain('data-high');
    expect(drawn(1, 3)).toContain('data-high="true"');
    expect(drawn(5, 1)).toContain('data-high="true"');
  });
});
