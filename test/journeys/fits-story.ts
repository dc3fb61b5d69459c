import { expect } from 'vitest';
import type { Page } from 'playwright-core';
import type { JobSheet } from '@/lib/schema/sheet';
import type { RunningServer } from '../setup/start-server.mjs';
import { post, ready } from './bench-story';

const um = 1_000_000;
const mm = 1000 * um;
const stations = ['top', 'middle', 'bottom'];
const directions = ['A', 'B'];

/** A job of liners and pistons, wanted 0.008 to 0.012 clear, aim 0.010; nothing is measured yet. */
export type Fan = { server: RunningServer; jobId: string; gaugeId: string; deviceId: string };

export async function startFan(server: RunningServer, count: number): Promise<Fan> {
  const id = () => crypto.randomUUID();
  const [jobId, liner, piston, bore, outside, gaugeId] = [id(), id(), id(), id(), id(), id()];
  const gauge = {
    id: gaugeId, name: 'Mic 1', kind: 'micrometer', unit: 'mm', resolutionPm: um,
    uncertaintyPm: 0.4 * um, rangeLowPm: 0, rangeHighPm: 25 * mm, checkedOn: null, note: '',
  }; // prettier-ignore
  const feature = {
    unit: 'mm', nominalPm: 18 * mm, isoClass: null, stations, directions, pictureId: null,
    pictureX: null, pictureY: null,
  }; // prettier-ignore
  expect((await post(server, 'gauges', gauge)).status).toBe(201);
  const answer = await post(server, 'jobs/start', {
    job: {
      id: jobId, name: 'Fan', note: '', drawing: 'HAF-3', revision: 'B', unit: 'mm',
      finishedAt: null,
    },
    parts: [
      { id: liner, position: 1, name: 'Liner', material: '', prefix: 'L', quantity: count },
      { id: piston, position: 2, name: 'Piston', material: '', prefix: 'P', quantity: count },
    ],
    features: [
      {
        ...feature, id: bore, partId: liner, position: 1, balloon: '1', name: 'Bore', kind: 'bore',
        asDrawn: '18 +0.018 0', upperPm: 18 * um, lowerPm: 0,
      },
      {
        ...feature, id: outside, partId: piston, position: 2, balloon: '2', name: 'Outside',
        kind: 'outside', asDrawn: '18', upperPm: null, lowerPm: null,
      },
    ],
    fits: [
      {
        id: id(), internalFeatureId: bore, externalFeatureId: outside, name: 'Piston in liner',
        way: 'limits', classes: null, minPm: 8 * um, maxPm: 12 * um, aimPm: 10 * um,
        governs: 'mean',
      },
    ],
    runs: [],
  }); // prettier-ignore
  expect(answer.status).toBe(201);
  return { server, jobId, gaugeId, deviceId: id() };
}

export async function fanSheet({ server, jobId }: Fan): Promise<JobSheet> {
  return (await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)).json() as Promise<JobSheet>;
}

/** The fits sheet of the job. */
export const fitsOf = ({ server, jobId }: Fan) => `${server.url}/jobs/${jobId}/fits`;

/** Six readings of each piece, alike, in whole micrometres from 18 mm; as another device keeps them. */
export async function keepSizes(fan: Fan, sizes: Record<string, number>): Promise<void> {
  const sheet = await fanSheet(fan);
  let deviceSeq = sheet.readings.filter(({ deviceId }) => deviceId === fan.deviceId).length;
  const entries = Object.entries(sizes).flatMap(([mark, microns]) => {
    const piece = sheet.pieces.find((one) => one.mark === mark)!;
    const feature = sheet.features.find(({ partId }) => partId === piece.partId)!;
    return [0, 1, 2, 3, 4, 5].map((place) => ({
      id: crypto.randomUUID(),
      deviceTime: new Date().toISOString(),
      deviceSeq: (deviceSeq += 1),
      personId: null,
      text: (18 + microns / 1000).toFixed(3),
      unit: 'mm',
      valuePm: 18 * mm + microns * um,
      resolutionPm: um,
      pieceId: piece.id,
      featureId: feature.id,
      gaugeId: fan.gaugeId,
      station: stations[place >> 1],
      direction: directions[place & 1],
      temperatureMilliC: null,
      heldAs: null,
    }));
  });
  for (let from = 0; from < entries.length; from += 90) {
    const body = { deviceId: fan.deviceId, entries: entries.slice(from, from + 90) };
    const { outcomes } = (await (await post(fan.server, 'readings', body)).json()) as {
      outcomes: { state: string }[];
    };
    expect(outcomes.filter(({ state }) => state !== 'kept')).toEqual([]);
  }
}

/** Changes a thing as another program would. */
export async function patch(fan: Fan, path: string, body: object): Promise<void> {
  const current = (await (await fetch(`${fan.server.url}/api/v1/${path}`)).json()) as {
    version: number;
  };
  const answer = await fetch(`${fan.server.url}/api/v1/${path}`, {
    method: 'PATCH',
    headers: {
      'content-type': 'application/json',
      origin: fan.server.url,
      'fitwright-device': fan.deviceId,
    },
    body: JSON.stringify({ version: current.version, ...body }),
  });
  expect(answer.status).toBe(200);
}

/** The Bench at the one feature of a piece. */
export async function benchAt(fan: Fan, page: Page, mark: string): Promise<void> {
  const sheet = await fanSheet(fan);
  const piece = sheet.pieces.find((one) => one.mark === mark)!;
  const feature = sheet.features.find(({ partId }) => partId === piece.partId)!;
  const address = new URL(`${fan.server.url}/jobs/${fan.jobId}/bench`);
  address.searchParams.set('piece', piece.id);
  address.searchParams.set('feature', feature.id);
  await page.goto(address.href);
  await ready(page);
}

/**
 * Types readings at the Bench, one after another, and waits until the book has them. `sinceCut` is how many count
 * already, where some were before a cut.
 */
export async function typeReadings(
  fan: Fan,
  page: Page,
  mark: string,
  texts: string[],
  sinceCut?: number,
) {
  await benchAt(fan, page, mark);
  const { id } = (await fanSheet(fan)).pieces.find((one) => one.mark === mark)!;
  const kept = async () =>
    (await fanSheet(fan)).readings.filter(({ pieceId }) => pieceId === id).length;
  const before = await kept();
  // The first reading of a feature asks which gauge it is of.
  const gauges = page.getByRole('list', { name: 'Gauges' }).getByRole('button');
  if ((await gauges.count()) > 0) await gauges.first().click();
  for (const [index, text] of texts.entries()) {
    // The same figure sooner is a button that bounced, and is not taken.
    if (text === texts[index - 1]) await page.waitForTimeout(450);
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
    await page
      .getByText(`${(sinceCut ?? before) + index + 1} of 6 taken`)
      .first()
      .waitFor();
  }
  await expect.poll(kept, { timeout: 20_000 }).toBe(before + texts.length);
}

/** The cell of a pair, by what it says. */
export const cell = (page: Page, name: string | RegExp) =>
  page.getByRole('grid').getByRole('gridcell', { name });

export const pairs = (page: Page) => page.getByRole('region', { name: 'Pairs', exact: true });

/** The row of a pair in the list. */
export const pairRow = (page: Page, external: string, internal: string) =>
  pairs(page)
    .getByRole('listitem')
    .filter({ hasText: new RegExp(`^${external} in ${internal}\\b`) });
