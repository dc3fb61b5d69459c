import { cookies } from 'next/headers';
import { blindChoice } from '@/lib/rules/entry-blind';
import { standing } from '@/lib/rules/standing';
import { jobSheet } from '@/lib/store/job-sheet';
import { jobsRegister } from '@/lib/store/jobs-register';
import type { JobSheet } from '@/lib/schema/sheet';
import { shownLength } from '@/lib/text/shown-size';
import type { chosenHere } from './chosen';
import type { Stopped } from './ui/jobs/carry-on';
import { jobLine, type JobLine } from './ui/jobs/job-line';

/** Jobs beyond this many, oldest first to go, are left to the API: each line is worked out from its sheet. */
const shownMost = 30;

/** The lines of the register, and where this device stopped. */
export async function jobsHere(
  chosen: Awaited<ReturnType<typeof chosenHere>>,
  device: string | null,
): Promise<{ lines: JobLine[]; stopped: Stopped | null }> {
  const entries = (await jobsRegister()).filter(({ job }) => job.struckAt === null);
  const lines: JobLine[] = [];
  let latest: { sheet: JobSheet; line: JobLine; seq: number } | null = null;
  for (const { job, lastAt } of entries.slice(0, shownMost)) {
    const sheet = await jobSheet(job.id);
    if (sheet === null) continue;
    const line = jobLine(sheet, lastAt, chosen);
    lines.push(line);
    const own = sheet.readings.findLast((reading) => reading.deviceId === device);
    if (own !== undefined && own.seq > (latest?.seq ?? 0)) latest = { sheet, line, seq: own.seq };
  }
  return { lines, stopped: latest === null ? null : stoppedAt(latest, chosen, await isBlind()) };
}

/** This device measures unseen: no earlier reading is told on the way to the Bench. */
async function isBlind(): Promise<boolean> {
  return blindChoice((await cookies()).get('fw-blind')?.value ?? null) !== 'off';
}

function stoppedAt(
  { sheet, line, seq }: { sheet: JobSheet; line: JobLine; seq: number },
  { unit, decimal }: Awaited<ReturnType<typeof chosenHere>>,
  blind: boolean,
): Stopped {
  const own = sheet.readings.find((row) => row.seq === seq)!;
  const reading = {
    ...own,
    ...standing(
      [own],
      sheet.corrections.filter((row) => row.readingId === own.id),
    )[0]!,
  };
  const feature = sheet.features.find((row) => row.id === reading.featureId);
  const shown = { unit: unit ?? sheet.job.unit, decimal };
  const piece = sheet.pieces.find((row) => row.id === reading.pieceId)!;
  const part = sheet.parts.find((row) => row.id === piece.partId)!;
  return {
    mark: piece.mark,
    part: part.name,
    feature: feature?.name ?? '',
    read: blind ? null : shownLength(reading.valuePm, reading.resolutionPm, shown),
    at: reading.receivedAt,
    next: line.next,
    href: `/jobs/${sheet.job.id}/bench?piece=${piece.id}&feature=${reading.featureId}`,
  };
}
