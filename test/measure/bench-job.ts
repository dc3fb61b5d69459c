import type { JobSheet } from '@/lib/schema/sheet';

export type BenchJob = { jobId: string; gaugeId: string };

const mmPm = 1_000_000_000;
const ringCount = 90;
const stations = ['top', 'middle', 'bottom'];
const directions = ['A', 'B'];
const collarStations = ['1', '2', '3', '4', '5'];
const collarCount = 475;

/**
 * A job of rings to be measured, the pins they must fit and collars, through the API of a running server.
 * Nothing is read of the rings; with `readings` the pins and the collars are: 540 and 9500, together 10 040.
 */
export async function makeBenchJob(url: string, { readings }: { readings: boolean }) {
  const id = () => crypto.randomUUID();
  const [jobId, ring, pin, collar, bore, outside] = [id(), id(), id(), id(), id(), id()];
  const collarBore = id();
  const collarLength = id();
  const none = { isoClass: null, pictureId: null, pictureX: null, pictureY: null };
  const size = { ...none, unit: 'mm', nominalPm: 18 * mmPm };
  const places = { stations, directions };
  await post(url, 'jobs/start', {
    job: {
      id: jobId,
      name: 'Rings',
      note: '',
      drawing: '',
      revision: '',
      unit: 'mm',
      finishedAt: null,
    },
    parts: [
      { id: ring, position: 1, name: 'Ring', material: '', prefix: 'R', quantity: ringCount },
      { id: pin, position: 2, name: 'Pin', material: '', prefix: 'P', quantity: ringCount },
      { id: collar, position: 3, name: 'Collar', material: '', prefix: 'C', quantity: collarCount },
    ],
    features: [
      {
        ...size,
        ...places,
        id: bore,
        partId: ring,
        position: 1,
        balloon: '1',
        name: 'Bore',
        kind: 'bore',
        asDrawn: '18.000 +0.018 0',
        upperPm: 18_000_000,
        lowerPm: 0,
      },
      {
        ...size,
        ...places,
        id: outside,
        partId: pin,
        position: 1,
        balloon: '2',
        name: 'Outside',
        kind: 'outside',
        asDrawn: '18.000 -0.006 -0.017',
        upperPm: -6_000_000,
        lowerPm: -17_000_000,
      },
      ...[collarBore, collarLength].map((featureId, index) => ({
        ...size,
        id: featureId,
        partId: collar,
        position: index + 1,
        balloon: String(3 + index),
        name: index === 0 ? 'Bore' : 'Length',
        kind: index === 0 ? 'bore' : 'length',
        asDrawn: '18.000 +0.018 0',
        upperPm: 18_000_000,
        lowerPm: 0,
        stations: collarStations,
        directions,
      })),
    ],
    fits: [
      {
        id: id(),
        name: 'Pin in ring',
        way: 'limits',
        classes: null,
        internalFeatureId: bore,
        externalFeatureId: outside,
        minPm: 8_000_000,
        maxPm: 20_000_000,
        aimPm: 12_000_000,
        governs: 'extreme',
      },
    ],
    runs: [],
  });
  const sheet = await sheetOf(url, jobId);
  const gaugeId = sheet.gauges.find(({ name }) => name === 'Bore gauge 1')!.id;
  if (!readings) return { jobId, gaugeId };

  const piecesOf = (partId: string) =>
    sheet.pieces.filter((piece) => piece.partId === partId).sort((a, b) => a.ordinal - b.ordinal);
  const rows = [
    ...piecesOf(pin).flatMap((piece) => cellRows(piece.id, outside, stations, 17.988)),
    ...piecesOf(collar).flatMap((piece) => [
      ...cellRows(piece.id, collarBore, collarStations, 18.003),
      ...cellRows(piece.id, collarLength, collarStations, 18.003),
    ]),
  ];
  const deviceId = id();
  for (let from = 0; from < rows.length; from += 100) {
    const entries = rows.slice(from, from + 100).map((row, n) => ({
      ...row,
      id: id(),
      gaugeId,
      deviceSeq: from + n + 1,
      deviceTime: '2026-03-14T10:00:00Z',
      unit: 'mm',
      resolutionPm: 1_000_000,
      personId: null,
      temperatureMilliC: null,
      heldAs: null,
    }));
    await post(url, 'readings', { deviceId, entries });
  }
  return { jobId, gaugeId };
}

/** One reading at each place, a few µm about a size, without randomness. */
function cellRows(pieceId: string, featureId: string, stationsOf: string[], aboutMm: number) {
  const seed = Number.parseInt(pieceId.slice(-4), 16);
  return stationsOf.flatMap((station, s) =>
    directions.map((direction, d) => {
      const offUm = (seed + 3 * s + 5 * d) % 6;
      const valuePm = Math.round(aboutMm * mmPm) + offUm * 1_000_000;
      const text = (valuePm / mmPm).toFixed(3);
      return { pieceId, featureId, station, direction, text, valuePm };
    }),
  );
}

/** The sheet of a job as the server has it now. */
export async function sheetOf(url: string, jobId: string): Promise<JobSheet> {
  return (await fetch(`${url}/api/v1/jobs/${jobId}/sheet`)).json() as Promise<JobSheet>;
}

/** Writes to the API as a page of the same server does. @throws {Error} when it is refused */
export async function post(url: string, path: string, body: unknown): Promise<void> {
  const answer = await fetch(`${url}/api/v1/${path}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      origin: url,
      'fitwright-device': crypto.randomUUID(),
    },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${path} was refused: ${await answer.text()}`);
  await answer.arrayBuffer();
}
