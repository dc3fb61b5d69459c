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
  const readings = exampleReadings((mark) => pieces.find((piece) => piece.mark === mark)!.id);
  return {
    seq: 1,
    job: { ...kept, number: 14, ...job },
    parts: parts.map((row) => ({ ...kept, jobId, ...row })),
    pieces,
    features: features.map((row) => ({ ...kept, jobId, ...row })),
    fits: fits.map((row) => ({ ...kept, jobId, ...row })),
    pairs: [],
    cuts: [],
    runs: runs.map((row) => ({ ...kept, jobId, ...row })),
    runEvents: exampleEvents.map((row) => ({ ...kept, ...row })),
    departures: [{ ...kept, ...exampleDeparture }],
    pictures: [],
    gauges: exampleGauges.map((row) => ({ ...kept, ...untaughtGauge, ...row })),
    people: [{ ...kept, ...examplePerson }],
    materials: [],
    fitRules: [],
    readings: readings.map((row) => ({
      ...row,
      seq: row.deviceSeq,
      jobId,
      receivedAt: row.deviceTime,
      deviceId: exampleDeviceId,
    })),
    corrections: [],
  };
}
