import type { DeviceHeld } from '@/lib/schema/device';
import { store } from './client';

/** As many gaps as one answer names; the newest are the ones a device can still fill. */
const gapsMost = 1000;

/**
 * The highest running number the book has of a device, over all that devices note at the machine, and the
 * numbers below it that it lacks. A device that is not known has nothing. Cost: one walk over the device's numbers.
 */
export async function deviceHeld(deviceId: string): Promise<DeviceHeld> {
  const { engine, read } = await store();
  const id = engine === 'postgresql' ? '$1' : '?1';
  const rows = (await read(
    `WITH held AS (
       SELECT "deviceSeq" AS n FROM "Reading" WHERE "deviceId" = ${id}
       UNION SELECT "deviceSeq" FROM "Correction" WHERE "deviceId" = ${id}
       UNION SELECT "deviceSeq" FROM "Cut" WHERE "deviceId" = ${id}
       UNION SELECT "deviceSeq" FROM "RunEvent" WHERE "deviceId" = ${id}
       UNION SELECT "deviceSeq" FROM "Strike" WHERE "deviceId" = ${id}
       UNION SELECT 0),
     steps AS (SELECT n, lead(n) OVER (ORDER BY n) AS next FROM held)
     SELECT n, next FROM steps WHERE next IS NULL OR next > n + 1 ORDER BY n DESC LIMIT ${gapsMost + 1}`,
    [deviceId],
  )) as [number | bigint, number | bigint | null][];
  const highest = Number(rows[0]?.[0] ?? 0);
  const gaps = rows
    .slice(1)
    .map(([before, after]) => ({ from: Number(before) + 1, to: Number(after) - 1 }));
  return { deviceId, highest, gaps };
}
