import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import type { JobSheet } from '@/lib/schema/sheet';
import {
  exampleDeparture,
  exampleDeviceId,
  exampleEvents,
  exampleGauges,
  exampleJob,
  examplePerson,
  exampleReadings,
  exampleTurning,
} from '@/seed/hot-air-fan';
import { exampleId } from '@/seed/ids';

const kept = { version: 1, createdAt: '2026-03-13T18:00:00Z', struckAt: null };

/** The example as the sheet a server would send, without a server. */
export function exampleSheet(): JobSheet {
  const { job, parts, features, fits, runs } = exampleJob;
  const jobId = job.id;
  let count = 0;
  const pieces = parts.flatMap(({ id, prefix, quantity }) =>
    Array.from({ length: quantity }, (_, index) => {
      count += 1;
      const ordinal = index + 1;
      return {
        ...kept,
        id: exampleId('piece', count),
        jobId,
        partId: id,
        ordinal,
        mark: `${prefix}${ordinal}`,
        note: '',
      };
    }),
  );
  const pieceOf = (mark: string) => pieces.find((piece) => piece.mark === mark)!.id;
  const turned = exampleTurning(pieceOf);
  const readings = [...exampleReadings(pieceOf), ...turned.readings].sort((a, b) =>
    a.deviceTime < b.deviceTime ? -1 : 1,
  );
  return {
    seq: 1,
    job: { ...kept, number: 14, ...job },
    parts: parts.map((row) => ({ ...kept, jobId, ...row })),
    pieces,
    features: features.map((row) => ({ ...kept, jobId, ...row })),
    fits: fits.map((row) => ({ ...kept, jobId, ...row })),
    pairs: [],
    cuts: turned.cuts.map((row, index) => ({
      ...kept,
      ...row,
      jobId,
      ordinal: index + 1,
      afterPm: null,
      deviceId: exampleDeviceId,
    })),
    runs: runs.map((row) => ({ ...kept, jobId, ...row })),
    runEvents: exampleEvents.map((row) => ({ ...kept, ...row })),
    departures: [{ ...kept, ...exampleDeparture }],
    pictures: [],
    gauges: exampleGauges.map((row) => ({ ...kept, ...untaughtGauge, ...row })),
    people: [{ ...kept, ...examplePerson }],
    materials: [],
    fitRules: [],
    readings: readings.map((row, index) => ({
      ...row,
      seq: index + 1,
      jobId,
      receivedAt: row.deviceTime,
      deviceId: exampleDeviceId,
    })),
    corrections: [],
  };
}

/** The example before P7 was turned: no cuts, and of P7 only what it reads now. */
export function exampleUncut(): JobSheet {
  const sheet = exampleSheet();
  const before = new Set(sheet.cuts.map((cut) => cut.lastReadingId));
  return { ...sheet, cuts: [], readings: sheet.readings.filter(({ id }) => !before.has(id)) };
}
