import { describe, expect, it } from 'vitest';
import { fitRulesOf } from '@/app/ui/fits/fit-rules-of';
import { fitRulesLayout } from '@/app/ui/fit-rules/fit-rules-layout';
import { fitTableRows } from '@/app/ui/fit-rules/fit-table-rows';
import { smallJob } from '@/test/rules/small-job';

const mm = { unit: 'mm', decimal: '.' } as const;
const six = (microns: number) => Array.from({ length: 6 }, () => microns);

describe('fitRulesOf', () => {
  it('draws a bore still to make on the rule of the bores, at its target, tied to its shaft', () => {
    const view = smallJob({ bores: [six(10)], shafts: [six(0), six(-5)] });
    const data = fitRulesOf(view, view.fits[0]!, mm);
    expect(data.toMake).toMatchObject([
      { internal: 'L2', external: 'P2', make: 'internal', targetPm: 18_005_000_000 },
    ]);
    expect(data.toMake).toHaveLength(1);
    expect(fitTableRows(data).find(({ verdict }) => verdict === 'to make')).toMatchObject({
      internal: 'L2', internalSize: 'to 18.005', external: 'P2', externalSize: "17.995",
    }); // prettier-ignore
    const { shapes, scale } = fitRulesLayout(data, 1000);
    const line = shapes.find(({ role }) => role === 'toMakeLine');
    // At the aim it stands plumb.
    expect(line).toMatchObject({ kind: 'line' });
    if (line?.kind !== 'line') throw new Error('no line');
    expect(line.x1).toBeCloseTo(line.x2, 6);
    expect(shapes.filter(({ role }) => role === 'toMakeNotch')).toHaveLength(1);
    const texts = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
    const mark = texts.find(({ text }) => text === 'L2')!;
    expect(mark.role).toBe('markLive');
    expect(mark.y).toBeLessThan(line.y1);
    expect(scale.toPm).toBeGreaterThan(18_010_000_000);
  });
});
