import { store } from './client';

/** How often a gauge has been read, and when last; every gauge has an entry. */
export type GaugeUsage = { gaugeId: string; readings: number; lastAt: string | null };

/** What the register shows of each gauge's use. Cost: one walk over the index of readings by gauge. */
export async function gaugeUsage(): Promise<GaugeUsage[]> {
  const { read } = await store();
  const rows = await read(
    `SELECT g."id", (SELECT count(*) FROM "Reading" r WHERE r."gaugeId" = g."id"),
       (SELECT "receivedAt" FROM "Reading" WHERE "seq" =
         (SELECT max("seq") FROM "Reading" r WHERE r."gaugeId" = g."id"))
     FROM "Gauge" g ORDER BY g."createdAt", g."id"`,
  );
  return (rows as [string, number, string | null][]).map(([gaugeId, readings, lastAt]) => ({
    gaugeId,
    readings,
    lastAt,
  }));
}
