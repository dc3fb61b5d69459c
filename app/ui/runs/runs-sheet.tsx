'use client';

import { useCallback, useMemo, useRef, useState } from 'react';
import { oddPieces, type OddPieces } from '@/lib/rules/odd-pieces';
import { runDoubts } from '@/lib/rules/run-doubts';
import type { RunView } from '@/lib/rules/run-view';
import { runDoubtWords } from '@/lib/text/run-doubt-words';
import { runHeadWords, runSentence } from '@/lib/text/run-words';
import { turnWord } from '@/lib/text/turn-word';
import { Chart } from '../charts/chart';
import type { Palette } from '../charts/palette';
import { runChartConfig } from '../charts/run-chart-config';
import { runChartData } from '../charts/run-chart-data';
import { runDrawing } from '../charts/run-drawing';
import { useJob } from '../job/job-provider';
import { SheetFrame } from '../job/sheet-frame';
import { Choice } from '../primitives/choice';
import { EmptyState } from '../primitives/empty-state';
import { drawingSvg } from '../save/drawing-svg';
import { ControlSection } from './control-section';
import { DialForm } from './dial-form';
import { EventList } from './event-list';
import { EventRow } from './event-row';
import { NewRun } from './new-run';
import { runCsv } from './run-csv';
import { runName } from './run-name';
import { runSays } from './run-says';
import { RunSide } from './run-side';
import { RunTable } from './run-table';
import { SaveChart } from './save-chart';
import { StruckRuns } from './struck-runs';
import styles from './runs.module.css';

/**
 * The chart of a run, the drift line and its band, the limit it will reach, and what to do then. Which of
 * several runs is shown stands in the address, so that the way back leads to the same one.
 */
export function RunsSheet({ asked = null }: { asked?: string | null }) {
  const { view, chosen } = useJob();
  const [runId, setRunId] = useState(asked);
  const show = (id: string) => {
    setRunId(id);
    window.history.replaceState(null, '', `?run=${id}`);
  };
  const run = view.runs.find((candidate) => candidate.run.id === runId) ?? view.runs[0];
  if (run === undefined) {
    return (
      <SheetFrame current="Runs" number={5}>
        <h1 className="unseen">Runs</h1>
        <EmptyState sentence="No run yet. Say which feature is made one piece after another.">
          <NewRun />
          <StruckRuns run={null} />
        </EmptyState>
      </SheetFrame>
    );
  }
  return (
    <SheetFrame
      current="Runs"
      number={5}
      left={[{ label: 'Chart', value: 'single pieces, line since the last event' }]}
    >
      <div className={styles.head}>
        <h1>{runName(view, run)}</h1>
        <p className={styles.remark}>{runHeadWords(run, chosen, view.sheet.gauges)}</p>
      </div>
      {view.runs.length > 1 && (
        <Choice
          label="Run shown"
          name="run"
          value={run.run.id}
          onChange={show}
          options={view.runs.map((one) => ({ value: one.run.id, label: runName(view, one) }))}
        />
      )}
      <RunOpen key={run.run.id} run={run} />
      <details className={`${styles.more} not-on-paper`}>
        <summary>Another run</summary>
        <NewRun onMade={show} />
        <StruckRuns run={run} />
      </details>
    </SheetFrame>
  );
}

type Charts = 'run' | 'both' | 'control';

function RunOpen({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const [charts, setCharts] = useState<Charts>('both');
  const odd = useMemo(() => oddPieces(run), [run]);
  const doubts = useMemo(() => runDoubts(run), [run]);
  const hasControl = run.run.control !== 'none';
  return (
    <div className={styles.columns}>
      <div className={styles.first}>
        {hasControl && (
          <Choice<Charts>
            label="Charts shown"
            value={charts}
            onChange={setCharts}
            options={[
              { value: 'run', label: 'Run chart' },
              { value: 'both', label: 'Both' },
              { value: 'control', label: 'Control chart' },
            ]}
          />
        )}
        {hasControl && charts === 'control' ? (
          <ControlSection run={run} />
        ) : (
          <RunChart run={run} odd={odd} />
        )}
        {doubts.map((doubt) => (
          <p key={doubt.kind} className={styles.doubt}>
            {runDoubtWords(doubt, turnWord(run.features), chosen)}
          </p>
        ))}
      </div>
      <RunSide run={run} odd={odd} />
      <div className={styles.rest}>
        {hasControl && charts !== 'both' ? null : <ControlSection run={run} />}
        <EventList run={run} />
        <details className={`${styles.more} not-on-paper`}>
          <summary>The dial of its slide</summary>
          <DialForm key={run.run.version} run={run} />
        </details>
      </div>
    </div>
  );
}

function RunChart({ run, odd }: { run: RunView; odd: OddPieces }) {
  const { view, chosen } = useJob();
  const data = useMemo(() => runChartData(run, chosen, odd.odd), [run, chosen, odd]);
  const config = useCallback((palette: Palette) => runChartConfig(data, palette), [data]);
  const box = useRef<HTMLDivElement>(null);
  const title = runSentence(run, runSays(run, chosen), chosen);
  return (
    <section className={styles.chart} aria-label="Run chart">
      <p className={styles.remark}>{data.heightTitle}</p>
      <div ref={box}>
        <Chart title={title} config={config} table={<RunTable run={run} />} />
      </div>
      <SaveChart
        of={`${view.sheet.job.name} ${runName(view, run)} run chart`}
        box={box}
        svg={() => drawingSvg([runDrawing(data)], title)}
        csv={() => runCsv(run, chosen.unit)}
      />
      <EventRow run={run} />
    </section>
  );
}
