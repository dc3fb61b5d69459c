import { describe, expect, it } from 'vitest';
import { axisTicks, axisTurns } from '@/app/ui/charts/axis-turns';
import { runChartData } from '@/app/ui/charts/run-chart-data';
import { runDrawing } from '@/app/ui/charts/run-drawing';
import { drawingSvg } from '@/app/ui/save/drawing-svg';
import { jobView } from '@/lib/rules/job-view';
import { smallRun, smallRunSheet } from '../../rules/small-run';

const texts = (ticks: ReturnType<typeof axisTicks>) =>
  ticks.flatMap(({ ordinal, text }) => (text === null ? [] : [`${ordinal}: ${text}`]));

/** Eight pieces with two features each, the first of them measured on all and drifting. */
function ofTwo() {
  const sheet = smallRunSheet({
    sizes: [-20, -17, -15, -12, -9, -8, -5, -2],
    run: { alikeIds: ['second'] },
  });
  const first = sheet.features[0]!;
  const second = { ...first, id: 'second', name: 'Pin', nominalPm: 8_000_000_000 };
  return jobView({ ...sheet, features: [first, second] }).runs[0]!;
}

describe('the turns along the axis', () => {
  it('are numbered, the first with the prefix of the marks, the last called so', () => {
    const turns = axisTurns(smallRun({ sizes: [-9, null, -7], of: 5 }));
    expect(turns).toEqual({ end: 5, firstMark: 'W1', pieces: null });
    expect(texts(axisTicks(turns, 40))).toEqual(['1: W1', '2: 2', '3: 3', '4: 4', '5: 5, last']);
    // Half as wide only every second has room, 2 is within 4.3 px of W1, and 4 would touch "5, last".
    expect(texts(axisTicks(turns, 20))).toEqual(['1: W1', '5: 5, last']);
    expect(texts(axisTicks(turns, 22))).toEqual(['1: W1', '2: 2', '5: 5, last']);
    // And a batch of hundreds has no tick that says nothing.
    const many = axisTicks({ ...turns, end: 400 }, 2);
    expect(texts(many)).toHaveLength(many.length);
    expect(texts(many).slice(0, 2)).toEqual(['1: W1', '20: 20']);
    expect(texts(many).slice(-2)).toEqual(['360: 360', '400: 400, last']);
  });

  it('leave out the number before the last where less than a figure would be between them', () => {
    const turns = { end: 16, firstMark: 'W1', pieces: null };
    // "15" ends 9.1 px right of its tick, "16, last" begins 25.4 px left of its own, a figure is 9.1 px.
    expect(texts(axisTicks(turns, 44)).slice(-2)).toEqual(['15: 15', '16: 16, last']);
    expect(texts(axisTicks(turns, 43)).slice(-2)).toEqual(['14: 14', '16: 16, last']);
    // As wide as the plot of a phone of 360 px: 14 at every second turn is gone too.
    expect(texts(axisTicks(turns, 12)).slice(-2)).toEqual(['10: 10', '16: 16, last']);
    expect(axisTicks(turns, 12)).toHaveLength(16);
  });

  it('leave out a number that the mark of the first would lie over', () => {
    const turns = { end: 20, firstMark: 'Crank pin, left 1', pieces: null };
    expect(texts(axisTicks(turns, 34)).slice(0, 2)).toEqual(['1: Crank pin, left 1', '3: 3']);
  });

  it('are named by their pieces where a piece has several, no two names touching', () => {
    const turns = axisTurns(ofTwo());
    expect(turns.pieces!.map(({ ordinal, mark }) => `${ordinal} ${mark}`)).toEqual(
      Array.from({ length: 8 }, (_, i) => `${2 * i + 1} W${i + 1}`),
    );
    expect(texts(axisTicks(turns, 14))).toHaveLength(8);
    // W1 takes 22.4 px and 5 beside it: two turns of 13 px are too little.
    expect(texts(axisTicks(turns, 13))).toEqual(['1: W1', '5: W3', '9: W5', '13: W7']);
    expect(axisTicks(turns, 13)).toHaveLength(8);
  });

  it('are the same on the saved drawing, which says where the drift meets the limit', () => {
    const view = ofTwo();
    const svg = drawingSvg([runDrawing(runChartData(view, { unit: 'mm', decimal: '.' }))], '');
    for (const { piece } of view.pieces) expect(svg).toContain(`>${piece.mark}</text>`);
    expect(svg).toMatch(/>meets the limit(?: at|,) [^<]*<\/text>/);
    expect(svg).not.toMatch(/>2<\/text>|undefined|NaN/);
  });
});
