'use client';

import type { FitView } from '@/lib/rules/fit-view';
import { matrixOrder } from '@/lib/rules/matrix-order';
import { measuredBy } from '@/lib/rules/measured-by';
import { wantedWords } from '@/lib/text/fit-words';
import {
  matrixNotPrintedWords,
  paperCareWords,
  paperHeadings,
  paperNoteTitles,
} from '@/lib/text/paper-words';
import { purposeWords } from '@/lib/text/pairing-words';
import { saidWords } from '@/lib/text/ways-words';
import { scaleWords } from '@/lib/text/scale';
import { unitWords } from '@/lib/text/unit-words';
import { dayAndTime, dayOf } from '@/lib/text/when';
import { allInside } from '@/lib/rules/all-inside';
import { FitRules, FitTable } from '../fit-rules/fit-rules';
import { fitRulesLayout } from '../fit-rules/fit-rules-layout';
import { useJob } from '../job/job-provider';
import { VerdictMark } from '../verdict/verdict-mark';
import { fitRulesOf } from './fit-rules-of';
import { PaperMatrix, printedMost } from './paper-matrix';
import { paperNotes } from './paper-notes';
import { paperRows } from './paper-rows';
import { stepOf } from './step-of';
import styles from './paper.module.css';

/** What an A4 sheet has between its frame and the margins of the text, px. */
const rulesPx = 640;

/** The sheet of one fit as it is printed: the pairs, the two zones to scale, the table of clearances, title block. */
export function FitsPaper({ fit, at }: { fit: FitView; at: string }) {
  const { view, chosen } = useJob();
  const { job, people, pieces, gauges, pairs } = view.sheet;
  const stepPm = stepOf(view, fit);
  const rules = fitRulesOf(view, fit, chosen);
  const { timesFullSize } = fitRulesLayout(rules, rulesPx);
  const { rows, columns } = matrixOrder(fit);
  const marks = new Map(pieces.map(({ id, mark }) => [id, mark]));
  const person = (id: string | null) => people.find((one) => one.id === id)?.name ?? null;
  const names = { mark: (id: string) => marks.get(id) ?? '', person };
  const gauge = (id: string) => gauges.find((one) => one.id === id)?.name ?? 'a gauge';
  const notes = paperNotes(fit, pairs, stepPm, chosen, { ...names, gauge }, dayOf);
  const headings = paperHeadings(rules.internal, rules.external);
  const purpose = fit.fit.purpose ?? 'worst best';
  return (
    <div className={styles.paper}>
      <Frame />
      <table className={styles.pages}>
        <thead aria-hidden>
          <tr>
            <td className={styles.above} />
          </tr>
        </thead>
        <tbody>
          <tr>
            <td className={styles.text}>
              <header className={styles.head}>
                <h1>Pairs and fits</h1>
                <p>
                  {job.name}
                  <br />
                  {[
                    `Job ${String(job.number).padStart(3, '0')}`,
                    job.drawing && `drawing ${job.drawing}`,
                    job.revision && `revision ${job.revision}`,
                  ]
                    .filter(Boolean)
                    .join(', ')}
                </p>
                <p className={styles.wanted}>
                  {fit.fit.name}. {wantedWords(fit.fit, chosen)} {saidWords(fit.fit, chosen)}
                </p>
              </header>
              <table className={styles.pairs}>
                <thead>
                  <tr>
                    {headings.map((heading) => (
                      <th key={heading} scope="col">
                        {heading}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {paperRows(fit, stepPm, chosen, names, dayOf).map((row) => (
                    <tr key={`${row.internal} ${row.external}`}>
                      <td>{row.set}</td>
                      <td>{row.internal}</td>
                      <td>{row.internalSize}</td>
                      <td>{row.external}</td>
                      <td>{row.externalSize}</td>
                      <td>{row.clear}</td>
                      <td>
                        <VerdictMark state={row.mark.state} side={row.mark.side} /> {row.verdict}
                      </td>
                      <td>{row.chance}</td>
                      <td>{row.remark}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
              <p className={styles.says}>
                {purposeWords(
                  purpose,
                  { pairs: fit.pairs.length, allInside: allInside(fit) },
                  chosen,
                )}
              </p>
              <Notes title={paperNoteTitles.flagged} lines={notes.flagged} />
              <Notes title={paperNoteTitles.undone} lines={notes.undone} />
              <div className={styles.rules}>
                <FitRules data={rules} width={rulesPx} />
              </div>
              <div className={styles.twin}>
                <FitTable data={rules} />
              </div>
              {rows.length <= printedMost && columns.length <= printedMost ? (
                <PaperMatrix fit={fit} />
              ) : (
                <p className={styles.says}>{matrixNotPrintedWords(rows.length, columns.length)}</p>
              )}
              <p className={styles.care}>{paperCareWords}</p>
            </td>
          </tr>
        </tbody>
        <tfoot aria-hidden>
          <tr>
            <td className={styles.below} />
          </tr>
        </tfoot>
      </table>
      <dl className={styles.block}>
        <Cell label="Title" value={`${job.name}: pairs and fits`} wide />
        <Cell
          label="Measured by"
          value={measuredBy(view, fit).map(person).filter(Boolean).join(', ')}
        />
        <Cell label="Lengths" value={unitWords(chosen.unit)} />
        <Cell label="Sizes at" value="as read" />
        <Cell label="Sheet" value="3 Fits" />
        <Cell label="Gauges" value={gaugesOf().join(', ')} wide />
        <Cell label="Signed" value="" />
        <Cell label="Rules drawn" value={scaleWords(timesFullSize)} />
        <Cell label="Printed" value={dayAndTime(at)} />
        <Cell label="Record" value={`${String(job.number).padStart(3, '0')}-F`} />
      </dl>
    </div>
  );

  function gaugesOf(): string[] {
    const used = new Set(
      [...fit.internals, ...fit.externals].flatMap(({ size }) => size?.gaugeId ?? []),
    );
    return view.sheet.gauges.filter(({ id }) => used.has(id)).map(({ name }) => name);
  }
}

function Notes({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section className={styles.says} aria-label={title}>
      <p>{title}</p>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

function Cell({ label, value, wide = false }: { label: string; value: string; wide?: boolean }) {
  return (
    <div className={wide ? styles.wide : undefined}>
      <dt>{label}</dt>
      <dd>{value}</dd>
    </div>
  );
}

/** The frame of a drawing with its zones, on every page. */
function Frame() {
  return (
    <div className={styles.frame} aria-hidden>
      {[1, 2, 3, 4, 5, 6].map((zone) => (
        <span key={zone} className={styles.across} style={{ left: `${((zone - 0.5) / 6) * 100}%` }}>
          {zone}
        </span>
      ))}
      {['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'].map((zone, index) => (
        <span key={zone} className={styles.down} style={{ top: `${((index + 0.5) / 8) * 100}%` }}>
          {zone}
        </span>
      ))}
    </div>
  );
}
