import { expect } from 'vitest';
import type { Page } from 'playwright-core';
import { plainRunChoices } from '@/lib/rules/run-choices';
import type { Run } from '@/lib/schema/run';
import type { JobSheet } from '@/lib/schema/sheet';
import type { RunningServer } from '../setup/start-server.mjs';
import { entry, post, pressNext } from './bench-story';

/** A job of turned pins, 10.000 +- 0.020, made one after another; with `also` a seat of 8.000 on each. */
export type Pins = {
  jobId: string;
  featureId: string;
  alsoId: string;
  runId: string;
  pieceIds: string[];
  gaugeId: string;
};

export async function startPins(
  server: RunningServer,
  {
    quantity = 16,
    run = {},
    also = false,
  }: { quantity?: number; run?: Partial<Run>; also?: boolean } = {},
): Promise<Pins> {
  const id = () => crypto.randomUUID();
  const [jobId, partId, featureId, alsoId, runId] = [id(), id(), id(), id(), id()];
  const feature = {
    partId,
    kind: 'outside',
    unit: 'mm',
    upperPm: 20_000_000,
    lowerPm: -20_000_000,
    isoClass: null,
    stations: ['middle'],
    directions: ['A'],
    pictureId: null,
    pictureX: null,
    pictureY: null,
  };
  const answer = await post(server, 'jobs/start', {
    job: {
      id: jobId,
      name: 'Pins',
      note: '',
      drawing: '',
      revision: '',
      unit: 'mm',
      finishedAt: null,
    },
    parts: [{ id: partId, position: 1, name: 'Pin', material: '', prefix: 'Q', quantity }],
    features: [
      {
        ...feature,
        id: featureId,
        position: 1,
        balloon: '1',
        name: 'Outside',
        asDrawn: '10 \u00b10.02',
        nominalPm: 10_000_000_000,
      },
      ...(also
        ? [
            {
              ...feature,
              id: alsoId,
              position: 2,
              balloon: '2',
              name: 'Seat',
              asDrawn: '8 \u00b10.02',
              nominalPm: 8_000_000_000,
            },
          ]
        : []),
    ],
    fits: [],
    runs: [
      {
        id: runId,
        featureId,
        dial: 'radius',
        divisionPm: 5_000_000,
        ...plainRunChoices,
        ...run,
      },
    ],
  });
  expect(answer.status).toBe(201);
  const sheet = await sheetAt(server, jobId);
  return {
    jobId,
    featureId,
    alsoId,
    runId,
    pieceIds: sheet.pieces.sort((a, b) => a.ordinal - b.ordinal).map((piece) => piece.id),
    gaugeId: sheet.gauges.find(({ name }) => name === 'Mic 2')!.id,
  };
}

export async function sheetAt(server: RunningServer, jobId: string): Promise<JobSheet> {
  return (await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)).json() as Promise<JobSheet>;
}

const deviceId = crypto.randomUUID();
let deviceSeq = 0;

/** Readings of pins from the first on, micrometres from the nominal, sent as another device sends them. */
export async function measure(
  server: RunningServer,
  pins: Pins,
  microns: readonly number[],
  { first = 1, featureId = pins.featureId, nominalMm = 10 } = {},
): Promise<void> {
  const entries = microns.map((um, i) => {
    deviceSeq += 1;
    return {
      id: crypto.randomUUID(),
      deviceTime: '2026-03-14T10:00:00Z',
      deviceSeq,
      personId: null,
      text: (nominalMm + um / 1000).toFixed(3),
      unit: 'mm',
      valuePm: nominalMm * 1_000_000_000 + um * 1_000_000,
      resolutionPm: 1_000_000,
      pieceId: pins.pieceIds[first - 1 + i],
      featureId,
      gaugeId: pins.gaugeId,
      station: 'middle',
      direction: 'A',
      temperatureMilliC: null,
      heldAs: null,
    };
  });
  const answer = await post(server, 'readings', { deviceId, entries });
  expect(((await answer.json()) as { outcomes: { state: string }[] }).outcomes).toEqual(
    entries.map(() => expect.objectContaining({ state: 'kept' }) as unknown),
  );
}

/** One reading typed at the Bench. */
export async function log(page: Page, figure: string): Promise<void> {
  await page.keyboard.type(figure);
  await page.keyboard.press('Enter');
  await expect.poll(() => entry(page).inputValue()).toBe('');
}

/** On to the next pin. */
export async function next(page: Page, mark: string): Promise<void> {
  await pressNext(page);
  await expect.poll(() => page.title()).toContain(`${mark} `);
}

/** What the run chart says to those who cannot see it. */
export const chartSays = (page: Page) =>
  page
    .getByRole('region', { name: 'Run chart', exact: true })
    .getByRole('img')
    .getAttribute('aria-label');
