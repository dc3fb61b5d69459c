import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it, vi } from 'vitest';
import { JobProvider } from '@/app/ui/job/job-provider';
import { RunsSheet } from '@/app/ui/runs/runs-sheet';
import type { JobSheet } from '@/lib/schema/sheet';
import { correctionOf, um } from '@/test/rules/make';
import { smallRunSheet, wander, type SmallRun } from '@/test/rules/small-run';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }), usePathname: () => '/' }));

/** The Runs sheet as the server draws it, its tags taken out. */
function drawn(small: SmallRun): string {
  return shown(smallRunSheet(small));
}

function shown(sheet: JobSheet): string {
  return markup(sheet)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
}

function markup(sheet: JobSheet): string {
  return renderToStaticMarkup(
    <JobProvider sheet={sheet} chosen={{ unit: 'mm', decimal: '.', hand: 'right', personId: null }}>
      <RunsSheet />
    </JobProvider>,
  );
}

const drifting = [-9, -7, -6, -4, -3, -1, 0, 2];
const small = {
  sizes: drifting,
  feature: { lowerPm: -10 * um, upperPm: 10 * um },
  run: { dial: 'radius', divisionPm: um / 2 } as const,
};

describe('the Runs sheet', () => {
  it('puts an offset under the sentence that asks for it, with every digit of the dial', () => {
    const text = drawn({ ...small, of: 30 });
    expect(text).toMatch(/or put this in: Offset, on diameter −0\.01\d /);
    expect(text).toMatch(/Radius dial, smaller 0\.00\d5? Then W1\d comes out near 11\.99\d: an/);
    expect(text).toMatch(/Growing 0\.0015 a piece; about W1\d is the last good one/);
  });

  it('puts none forward where the batch is made before', () => {
    const text = drawn({ ...small, of: 10 });
    expect(text).toContain('The batch should stay inside');
    expect(text).not.toContain('Offset, on diameter');
    expect(text).not.toContain('put this in');
  });

  it('says why there is none where one is wanted', () => {
    const text = drawn({ ...small, run: { dial: 'diameter', divisionPm: 50 * um }, of: 30 });
    expect(text).toContain('An offset would be less than one division of the dial.');
    expect(text).not.toContain('comes out near');
  });

  it('speaks of a length by its size, and of no radius', () => {
    const length = { ...small.feature, kind: 'length' } as const;
    const run = { dial: 'diameter', divisionPm: um } as const;
    const text = drawn({ ...small, feature: length, run, of: 30 });
    expect(text).toMatch(/Offset, on the size −0\.01\d On the dial, smaller 0\.01\d/);
    expect(text).not.toMatch(/radius/i);
  });

  it('lets the zones alone say what to do, where the batch runs by them', () => {
    const run = { ...small.run, zones: true };
    const text = drawn({ ...small, run, of: 30 });
    expect(text).not.toContain('then act');
    expect(text).not.toContain('is the last good one. ');
    expect(text).toContain('Growing, each piece');
    expect(text.match(/Log W\d+/g)).toHaveLength(1);
    expect(text).toContain('Log W9');
  });

  it('asks for a decision where there is something to do, and not where the batch ends before', () => {
    const asks = (text: SmallRun) => markup(smallRunSheet(text)).includes('decide');
    expect(asks({ ...small, of: 30 })).toBe(true);
    expect(asks({ ...small, of: 10 })).toBe(false);
    expect(asks({ ...small, of: 8 })).toBe(false);
  });

  it('asks for an odd piece to be settled before what it counts in is acted on', () => {
    const sizes = [...wander(12, 1, -13), 25];
    const says = 'W13 stands off the line and counts in this: settle it first.';
    expect(drawn({ sizes, of: 30 })).toContain(says);
    const right = () => [correctionOf(13, { kind: 'count', reason: 'right, off the line' })];
    expect(drawn({ sizes, corrections: right, of: 30 })).not.toContain('settle it first');
    // Before an event that starts afresh it counts in nothing that is said.
    const events = [{ kind: 'insert changed', afterOrdinal: 13 }] as const;
    expect(drawn({ sizes: [...sizes, -13, -12], events, of: 30 })).not.toContain('settle it first');
  });

  it('shows the pieces on the drawn limits, and nothing where none are drawn', () => {
    const says = 'Since the last event, on the drawn limits';
    expect(drawn({ ...small, feature: { lowerPm: null, upperPm: 10 * um } })).toContain(says);
    expect(drawn({ ...small, feature: { lowerPm: null, upperPm: null } })).not.toContain(says);
  });

  it('offers the move of the drift in one tap when it is due, and by zones no other than theirs', () => {
    const due = { sizes: [...drifting, 8, 9], feature: small.feature, of: 30 };
    const run = { dial: 'radius', divisionPm: um / 2 } as const;
    expect(drawn({ ...due, run })).toMatch(/Moved −0\.01\d/);
    // Two in the high quarter, 8.5 over the middle of the limits: 4.25 on the radius, eight divisions of 0.5.
    const zones = drawn({ ...due, run: { ...run, zones: true } });
    expect(zones.match(/Moved [^ ]+/g)).toEqual(['Moved −0.008']);
    expect(zones).toContain('Move it 0.008 smaller');
    // A dial in ten-thousandths of an inch: 1.67 of them on the radius, so two.
    const inInches = { ...run, divisionPm: 2.54 * um, zones: true };
    expect(drawn({ ...due, run: inInches })).toContain('Moved −0.0004 in ');
  });

  it('notes what happens now after the last piece that was read, also where it was set aside', () => {
    const corrections = () => [correctionOf(8, { kind: 'void', reason: 'chipped' })];
    expect(drawn({ ...small, of: 30 })).toContain('After W8 Insert changed');
    expect(drawn({ ...small, corrections, of: 30 })).toContain('After W8 Insert changed');
  });

  it('says why no run can be started, and leads to what is missing', () => {
    const sheet = { ...smallRunSheet(small), runs: [], runEvents: [] };
    expect(shown(sheet)).toContain('Start the run');
    const empty = markup({ ...sheet, features: [], readings: [] });
    expect(empty).toContain('This job has no feature yet that could be measured.');
    expect(empty).toContain(`href="/jobs/${sheet.job.id}/edit">Add the first one</a>`);
    expect(shown(smallRunSheet(small))).toContain('Every feature of this job has its run.');
  });

  it('leaves off the paper what is there to be pressed: the events that can be noted, the offer of zones', () => {
    const html = (zones: boolean) =>
      markup(smallRunSheet({ ...small, run: { ...small.run, zones } }));
    expect(html(false)).toMatch(/<section class="[^"]*not-on-paper" aria-label="Note an event"/);
    const zonesOff = /<div class="not-on-paper"><section [^>]*><div[^>]*><h2[^>]*>By zones</;
    expect(html(false)).toMatch(zonesOff);
    expect(html(true)).not.toMatch(/<div class="not-on-paper"><section /);
  });

  it('counts turns where a piece has several of its features', () => {
    const sheet = smallRunSheet({ ...small, of: 30, run: { ...small.run, alikeIds: ['pin'] } });
    const [boss] = sheet.features;
    const text = shown({
      ...sheet,
      features: [boss!, { ...boss!, id: 'pin', name: 'Pin', nominalPm: 8_000 * um }],
    });
    expect(text).toMatch(/8 of 60 turns made, .* Growing 0\.00\d+ a turn; about/);
    expect(text).toMatch(/Growing, each turn .* Turns since the last event 8 /);
    expect(text).not.toMatch(/(?:a|each|every \w+) piece[;: ]/);
  });

  it('draws single pieces whatever is taken together', () => {
    const run = { ...small.run, control: 'single pieces', together: 5 } as const;
    expect(drawn({ ...small, run, of: 30 })).toContain('W8');
  });

  it('shows what the averages and the sums are set to, to be set anew, and nothing to set elsewhere', () => {
    const sizes = wander(24, 2, -13);
    const ewma = drawn({ sizes, run: { control: 'ewma', averageWeightMilli: 150 } });
    expect(ewma).toContain('The newest weighs 0.15; limits at 3 sigma of the average.');
    expect(ewma).toContain('Weight of the newest usual 0.2');
    expect(ewma).not.toContain('Decision interval');
    const cusum = drawn({ sizes, run: { control: 'cusum' } });
    expect(cusum).toContain('Decision interval 5 sigma.');
    expect(cusum).toContain('Reference value, in sigma usual 0.5');
    expect(cusum).not.toContain('Weight of the newest');
    const singles = drawn({ sizes, run: { control: 'single pieces' } });
    expect(singles).not.toContain('in sigma');
  });

  it('gives a capability with its limits for a steady run that is long enough', () => {
    const text = drawn({ sizes: wander(100, 2, -13), gauge: { resolutionPm: um / 10 } });
    expect(text).toMatch(/Cpk? /);
    expect(text).toMatch(
      /At least 99 % of pieces made like these lie between 11\.98\d\d and 11\.99\d\d, with 95 %/,
    );
  });

  it('says between which sizes pieces lie only where a capability may be said', () => {
    const sizes = wander(100, 2, -13).map((off, i) => off + i / 20);
    const text = drawn({ sizes, gauge: { resolutionPm: um / 10 } });
    expect(text).toContain('It drifts between events');
    expect(text).not.toContain('pieces made like these');
  });
});
