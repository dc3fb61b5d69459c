import type { JobSheet } from '@/lib/schema/sheet';
import { seededDraws } from './seeded-draws';

const um = 1_000_000;
const mm = 1000 * um;
const places = [0, 1, 2, 3, 4, 5];

/**
 * A job of so many bores and as many pistons, each read six times, in the notebook of a running server; its id.
 * Sizes scatter as a batch on a lathe does (3 µm), readings as a micrometer does (0.4 µm); always the same ones.
 */
export async function fitsJob(url: string, count: number): Promise<string> {
  const send = async (path: string, body: unknown) => {
    const answer = await fetch(`${url}/api/v1/${path}`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        origin: url,
        'fitwright-device': crypto.randomUUID(),
      },
      body: JSON.stringify(body),
    });
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
    return (await answer.json()) as Record<string, never>;
  };
  const [jobId, liner, piston, bore, outside, gaugeId] = places.map(() => crypto.randomUUID());
  await send('gauges', {
    id: gaugeId, name: 'Mic 1', kind: 'micrometer', unit: 'mm', resolutionPm: um,
    uncertaintyPm: 0.4 * um, rangeLowPm: 0, rangeHighPm: 25 * mm, checkedOn: null, note: '',
  }); // prettier-ignore
  const feature = {
    balloon: '1', unit: 'mm', nominalPm: 18 * mm, isoClass: null, directions: ['A', 'B'],
    stations: ['top', 'middle', 'bottom'], pictureId: null, pictureX: null, pictureY: null,
  } as const; // prettier-ignore
  await send('jobs/start', {
    job: {
      id: jobId, name: `${count} pistons`, note: '', drawing: '', revision: '', unit: 'mm',
      finishedAt: null,
    },
    parts: [
      { id: liner, position: 1, name: 'Liner', material: '', prefix: 'L', quantity: count },
      { id: piston, position: 2, name: 'Piston', material: '', prefix: 'P', quantity: count },
    ],
    features: [
      {
        ...feature, id: bore, partId: liner, position: 1, name: 'Bore', kind: 'bore',
        asDrawn: '18 +0.018 0', upperPm: 18 * um, lowerPm: 0,
      },
      {
        ...feature, id: outside, partId: piston, position: 2, name: 'Outside', kind: 'outside',
        asDrawn: '18', upperPm: null, lowerPm: null,
      },
    ],
    fits: [
      {
        id: crypto.randomUUID(), internalFeatureId: bore, externalFeatureId: outside,
        name: 'Piston in liner', way: 'limits', classes: null, minPm: 6 * um, maxPm: 14 * um,
        aimPm: 10 * um, governs: 'extreme',
      },
    ],
    runs: [],
  }); // prettier-ignore
  const sheet = (await (await fetch(`${url}/api/v1/jobs/${jobId}/sheet`)).json()) as JobSheet;
  const { normal } = seededDraws(31);
  const deviceId = crypto.randomUUID();
  const entries = sheet.pieces.flatMap((piece) => {
    const isBore = piece.partId === liner;
    const sizePm = 18 * mm + (isBore ? 9 : -1) * um + 3 * um * normal();
    return places.map((place) => {
      const microns = Math.round((sizePm + 0.4 * um * normal()) / um);
      return {
        id: crypto.randomUUID(),
        deviceTime: '2026-11-25T09:00:00Z',
        personId: null,
        text: ((microns * um) / mm).toFixed(3),
        unit: 'mm',
        valuePm: microns * um,
        resolutionPm: um,
        pieceId: piece.id,
        featureId: isBore ? bore : outside,
        gaugeId,
        station: feature.stations[place >> 1],
        direction: feature.directions[place & 1],
        temperatureMilliC: null,
        heldAs: null,
      };
    });
  });
  const numbered = entries.map((entry, index) => ({ ...entry, deviceSeq: index + 1 }));
  for (let from = 0; from < numbered.length; from += 100) {
    await send('readings', { deviceId, entries: numbered.slice(from, from + 100) });
  }
  return jobId!;
}
