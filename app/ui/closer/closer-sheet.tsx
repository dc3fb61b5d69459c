'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useCallback, useDeferredValue, useMemo, useRef, useState, type ReactNode } from 'react';
import { runLimits } from '@/lib/rules/run-limits';
import type { RunHead } from '@/lib/schema/run-series';
import { closerWords } from '@/lib/text/closer-words';
import { runTitle } from '@/lib/text/run-title';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import { Chart } from '../charts/chart';
import { closerChartConfig } from '../charts/closer-chart-config';
import { closerChartData, type CloserFacts } from '../charts/closer-chart-data';
import type { Palette } from '../charts/palette';
import { chartStepPm } from '@/lib/text/chart-step';
import { wholeWindow, within, type Window } from '../charts/window';
import { Button } from '../primitives/button';
import { jobIndex } from '../primitives/job-index';
import { SheetHead } from '../primitives/sheet-head';
import { TitleBlock } from '../primitives/title-block';
import { SaveButtons } from '../save/save-buttons';
import frame from '../job/sheet-frame.module.css';
import styles from './closer.module.css';
import { seriesCsv } from './series-csv';
import { seriesSvg } from './series-svg';
import { useHandling } from './use-handling';
import { useSeries } from './use-series';

/** Columns a chart is drawn in: the extremes of each are always among what is drawn. */
const columns = 450;
const rowsMost = 200;

const acts = [
  ['nearer', 'Nearer'],
  ['farther', 'Farther'],
  ['earlier', 'Earlier'],
  ['later', 'Later'],
  ['all', 'All of it'],
] as const;

type Props = { head: RunHead; shown: Shown };

function CloserFrame({ job, children }: { job: RunHead['job']; children: ReactNode }) {
  return (
    <div className={frame.page}>
      <SheetHead
        job={{ name: job.name, href: `/jobs/${job.id}/board` }}
        index={jobIndex(job.id)}
        current="Runs"
      />
      {children}
    </div>
  );
}

function BackLink({ head: { job, run } }: { head: RunHead }) {
  return <Link href={`/jobs/${job.id}/runs?run=${run.id}`}>Back to the run</Link>;
}

/** A run of any length looked at closely: moved along, looked nearer at, taken away as a picture or figures. */
export function CloserSheet({ head, shown }: Props) {
  const { run, feature, features, turns, part, job, events } = head;
  const alike = features.length > 1;
  const router = useRouter();
  const onHead = useCallback(() => router.refresh(), [router]);
  const { series, trouble } = useSeries(run.id, job.id, onHead);
  const [asked, setAsked] = useState<Window | null>(null);
  const box = useRef<HTMLDivElement>(null);
  const facts = useMemo<CloserFacts>(() => {
    const { limits } = runLimits(features);
    const ordinals = series?.ordinals ?? [];
    return {
      ordinals,
      sizesPm: series?.sizesPm ?? [],
      nominalPm: alike ? 0 : feature.nominalPm,
      ...limits,
      events,
      last: Math.max(turns, ordinals.at(-1) ?? 1),
      marks: alike ? (series?.marks ?? []) : null,
    };
  }, [series, feature, features, alike, events, turns]);
  const seen = asked === null ? wholeWindow(facts.last) : within(asked, facts.last);
  const { act } = useHandling({ box, window: seen, last: facts.last, setWindow: setAsked });
  const data = useMemo(
    () => closerChartData(facts, { from: seen.from, to: seen.to }, columns, shown),
    [facts, seen.from, seen.to, shown],
  );
  const config = useCallback((palette: Palette) => closerChartConfig(data, palette), [data]);
  const at = (index: number) => ({
    ordinal: facts.ordinals[index]!,
    sizePm: facts.sizesPm[index]!,
    ...(facts.marks === null ? {} : { mark: facts.marks[index]! }),
  });
  const words = closerWords(
    {
      prefix: part.prefix,
      from: Math.max(1, Math.ceil(seen.from)),
      to: Math.floor(seen.to),
      last: facts.last,
      seen:
        data.seen === null
          ? null
          : { count: data.seen.count, least: at(data.seen.least), most: at(data.seen.most) },
      lowerPm: facts.lowerPm,
      upperPm: facts.upperPm,
      alike,
    },
    shown,
  );
  // The figures follow when there is time: moving along the picture comes first.
  const late = useDeferredValue(data.window);
  const table = useMemo(
    () => <CloserTable facts={facts} window={late} prefix={part.prefix} shown={shown} />,
    [facts, late, part.prefix, shown],
  );
  const name = runTitle(part.name, features);
  return (
    <CloserFrame job={job}>
      <main className={frame.main}>
        <div className={styles.head}>
          <h1>{name}, closer</h1>
          <BackLink head={head} />
        </div>
        {trouble !== null && (
          <p role="alert" className={styles.trouble}>
            {trouble}
          </p>
        )}
        <section className={styles.sheet} aria-label="Run, closer">
          <p className={styles.remark}>{data.heightTitle}</p>
          <div
            ref={box}
            className={styles.box}
            // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it is moved by keys
            tabIndex={0}
            role="group"
            aria-label="Stretch of the run. Plus and minus: nearer, farther. Arrows: earlier, later. 0: all of it."
            data-drawn={series === null ? undefined : facts.ordinals.length}
          >
            {series === null ? null : <Chart title={words} config={config} table={table} />}
          </div>
          <p className={styles.words} role="status">
            {series === null ? 'Reading the run.' : words}
          </p>
          <div className={`${styles.acts} not-on-paper`}>
            {acts.map(([does, says]) => (
              <Button key={does} onClick={() => act(does)}>
                {says}
              </Button>
            ))}
          </div>
          <div className={`${styles.acts} not-on-paper`}>
            <SaveButtons
              of={`${job.name} ${name}`}
              box={box}
              svg={() => seriesSvg(data, words)}
              csv={() => seriesCsv(facts, part.prefix, shown.unit)}
            />
            <Button onClick={() => window.print()}>Print</Button>
          </div>
        </section>
      </main>
      <TitleBlock
        left={[
          { label: 'Sheet', value: '5 Runs, closer' },
          { label: 'Lengths', value: shown.unit === 'mm' ? 'mm' : 'inch' },
        ]}
        right={[{ label: 'Measured', value: `${facts.ordinals.length} of ${facts.last}` }]}
      />
    </CloserFrame>
  );
}

/** The stretch in figures; of a long one its first pieces, and how many more there are. */
function CloserTable(props: { facts: CloserFacts; window: Window; prefix: string; shown: Shown }) {
  const { facts, window: seen, prefix, shown } = props;
  const indices: number[] = [];
  let more = 0;
  facts.ordinals.forEach((ordinal, i) => {
    if (ordinal < seen.from || ordinal > seen.to) return;
    if (indices.length < rowsMost) indices.push(i);
    else more += 1;
  });
  const step = chartStepPm[shown.unit];
  return (
    <>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">
              {facts.marks === null ? 'Size' : 'From its nominal'},{' '}
              {shown.unit === 'mm' ? 'mm' : 'inch'}
            </th>
          </tr>
        </thead>
        <tbody>
          {indices.map((i) => (
            <tr key={facts.ordinals[i]}>
              <th scope="row">{facts.marks?.[i] ?? `${prefix}${facts.ordinals[i]}`}</th>
              <td>
                {shownLength(
                  facts.sizesPm[i]!,
                  step,
                  shown,
                  facts.marks === null ? 'needed' : 'always',
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {more > 0 && (
        <p className={styles.remark}>
          {more} more in this stretch: look nearer, or save all of it as CSV.
        </p>
      )}
    </>
  );
}
