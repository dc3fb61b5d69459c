import { text as textOf } from 'node:stream/consumers';
import { prerenderToNodeStream } from 'react-dom/static';
import { describe, expect, it, vi } from 'vitest';
import { BenchSheet } from '@/app/ui/bench/bench-sheet';
import { stationCell } from '@/app/ui/bench/bench-map';
import { JobProvider } from '@/app/ui/job/job-provider';
import { standing } from '@/lib/rules/standing';
import type { JobSheet } from '@/lib/schema/sheet';
import { exampleSheet } from '@/test/rules/example-sheet';
import { correctionOf, readingOf } from '@/test/rules/make';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }) }));

const example = exampleSheet();
const idOf = (mark: string) => example.pieces.find((piece) => piece.mark === mark)!.id;
const featureOf = (balloon: string) =>
  example.features.find((feature) => feature.balloon === balloon)!.id;

/** The Bench as the server draws it with all that comes later, its tags taken out. */
async function bench(mark: string, balloon: string, sheet: JobSheet = example) {
  const html = await markup(mark, balloon, sheet);
  const text = html
    .replace(/<!--.*?-->|<style.*?<\/style>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
  return { html, text };
}
async function markup(mark: string, balloon: string, sheet: JobSheet): Promise<string> {
  const { prelude } = await prerenderToNodeStream(
    <JobProvider sheet={sheet} chosen={{ unit: 'mm', decimal: '.', hand: 'right', personId: null }}>
      <BenchSheet asked={{ pieceId: idOf(mark), featureId: featureOf(balloon) }} />
    </JobProvider>,
  );
  return textOf(prelude);
}

describe('the Bench', () => {
  it('shows the last reading, the size so far, the clearance and how many are taken', async () => {
    const { text } = await bench('P4', '4');
    expect(text).toContain('outside, made to L4');
    expect(text).toContain('6 of 6 taken');
    expect(text).toMatch(/Inside skirt, across B 18. ?003/);
    expect(text).toMatch(/So far 18.003 ± 0.001 0.010 clear in L4/);
  });

  it('asks about a held reading in the place of the keys, and leaves it out of the size', async () => {
    const { html, text } = await bench('P5', '4');
    expect(text).toContain('Held skirt, across A');
    expect(text).toContain('One turn of the thimble?');
    expect(text).toContain(
      'As typed 18.498 One turn less 17.998 0.500 a turn The other four 17.999',
    );
    expect(text).toContain('without 18.498');
    expect(html).not.toContain('aria-label="Keys"');
  });

  it('says what a piece on the lathe is to be made to, and lets it be cut', async () => {
    const { text } = await bench('P7', '4');
    expect(text).toContain('Make P7 to L7: 18.000');
    expect(text).toContain('0.086 left to turn');
    expect(text).toContain('Cut since');
    expect(text).toContain('Spindle stopped before you measure.');
    expect((await bench('P4', '4')).text).not.toContain('Cut since');
  });

  it('says what to make of a piece nobody has measured, without a way to void nothing', async () => {
    const { text } = await bench('P8', '4');
    expect(text).toContain('Nothing read yet');
    expect(text).toContain('Make P8 to L8: 18.006');
    expect(text).not.toContain('Void this');
  });

  it('speaks of the shape of a bore', async () => {
    expect((await bench('L8', '1')).text).toContain('Round within 0.001');
  });

  it('asks for a gauge in the place of the keys where none is known', async () => {
    const bare = { ...example, readings: [] };
    const { html, text } = await bench('L1', '1', bare);
    expect(html).toContain('placeholder="Which gauge?"');
    expect(text).toContain('Bore gauge 1 0.001 mm, 10 to 18.5');
    expect(text).toContain('Small-hole gauge 0.001 mm, 5 to 8, not this size');
  });

  it('sends to the register when there is no gauge at all', async () => {
    expect((await bench('L1', '1', { ...example, readings: [], gauges: [] })).text).toContain(
      'No gauge in the register.',
    );
  });

  it('says so when a job has nothing to measure', async () => {
    expect(
      (await bench('L1', '1', { ...example, features: [], fits: [], runs: [] })).text,
    ).toContain('No part of this job has a piece and a feature yet.');
  });

  it('has one input, and it wants no keyboard of the phone, no completion and no correction', async () => {
    const { html } = await bench('P4', '4');
    const inputs = html.match(/<input[^>]*>/g) ?? [];
    expect(inputs).toHaveLength(1);
    for (const word of [
      'type="text"',
      'inputMode="none"',
      'autoComplete="off"',
      'autoCorrect="off"',
      'autoCapitalize="off"',
      'spellCheck="false"',
    ]) {
      expect(inputs[0]).toContain(word);
    }
    expect(inputs[0]).not.toContain('maxLength');
  });
});

describe('stationCell', () => {
  const shown = { unit: 'mm', decimal: ',' } as const;

  it('shows the last reading that stands, in the mark of the person', () => {
    const both = standing([readingOf(1), readingOf(2, { valuePm: 18_004_000_000 })], []);
    expect(stationCell(both, shown)).toEqual({ text: '18,004', state: 'counted' });
  });

  it('passes a struck one over, unless nothing else was read', () => {
    const struck = [correctionOf(2, { kind: 'void' })];
    const two = standing([readingOf(1), readingOf(2, { valuePm: 19_000_000_000 })], struck);
    expect(stationCell(two, shown)).toEqual({ text: '18,000', state: 'counted' });
    const one = standing([readingOf(1)], [correctionOf(1, { kind: 'void' })]);
    expect(stationCell(one, shown)).toEqual({ text: '18,000', state: 'struck' });
    expect(stationCell([], shown)).toEqual({ text: null, state: 'empty' });
  });
});
