import { jobSheet } from '@/lib/store/job-sheet';
import { jobsRegister } from '@/lib/store/jobs-register';
import type { JobSheet } from '@/lib/schema/sheet';
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
  return { lines, stopped: latest === null ? null : stoppedAt(latest) };
}

function stoppedAt({ sheet, line, seq }: { sheet: JobSheet; line: JobLine; seq: number }): Stopped {
  const reading = sheet.readings.find((row) => row.seq === seq)!;
  const piece = sheet.pieces.find((row) => row.id === reading.pieceId)!;
  const part = sheet.parts.find((row) => row.id === piece.partId)!;
  return {
    mark: piece.mark,
    part: part.name,
    at: reading.receivedAt,
    next: line.next,
    href: `/jobs/${sheet.job.id}/bench?piece=${piece.id}&feature=${reading.featureId}`,
  };
}
