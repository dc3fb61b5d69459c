import { jobView } from '@/lib/rules/job-view';
import type { JobSheet } from '@/lib/schema/sheet';
import type { Shown } from '@/lib/text/shown-size';
import { countWord } from '@/lib/text/drift-words';
import { decisionWords } from '../job/decision-words';
import { nextWords } from '../job/next-words';

/** One job as the register shows it. */
export type JobLine = {
  id: string;
  number: number;
  name: string;
  /** "six parts, from drawing HAF-3 rev B" */
  remark: string;
  made: number;
  of: number;
  pairs: { made: number; of: number } | null;
  decisions: string[];
  next: string;
  lastAt: string;
};

/** What the register of jobs says of one job. Pure. */
export function jobLine(
  sheet: JobSheet,
  lastAt: string,
  chosen: Omit<Shown, 'unit'> & { unit: Shown['unit'] | null },
): JobLine {
  const view = jobView(sheet);
  const shown = { unit: chosen.unit ?? sheet.job.unit, decimal: chosen.decimal };
  const { job } = sheet;
  const parts = view.parts.length === 1 ? 'one part' : `${countWord(view.parts.length)} parts`;
  const revision = job.revision === '' ? '' : ` rev ${job.revision}`;
  const drawing = job.drawing === '' ? '' : `, from drawing ${job.drawing}${revision}`;
  const wanted = view.fits.reduce(
    (sum, fit) => sum + Math.min(fit.internals.length, fit.externals.length),
    0,
  );
  const done = view.fits.reduce((sum, fit) => sum + fit.pairs.length, 0);
  return {
    id: job.id,
    number: job.number,
    name: job.name,
    remark: parts + drawing,
    made: view.progress.made,
    of: view.progress.of,
    pairs: wanted === 0 ? null : { made: done, of: wanted },
    decisions: decisionWords(view, shown).map(({ mark, says }) => `${mark} ${says}`),
    next:
      job.finishedAt === null ? (nextWords(view, shown) ?? 'Everything is measured') : 'Finished',
    lastAt,
  };
}
