'use client';

import { useCallback, useMemo, useRef } from 'react';
import { isGrouped } from '@/lib/rules/control-groups';
import { controlView, type ControlChart } from '@/lib/rules/control-view';
import type { RunView } from '@/lib/rules/run-view';
import { signalRuns } from '@/lib/rules/signal-runs';
import { chartSettingSays } from '@/lib/text/chart-setting-words';
import {
  controlNames,
  limitsWords,
  linelessWords,
  noControlWords,
  shortGroupWords,
  signalWords,
  straddleWords,
  trackNames,
  withinPieceWords,
} from '@/lib/text/control-words';
import { turnWord } from '@/lib/text/turn-word';
import { Chart } from '../charts/chart';
import { controlChartConfig } from '../charts/control-chart-config';
import { controlChartData, type ControlPlotData } from '../charts/control-chart-data';
import { controlDrawing } from '../charts/control-drawing';
import type { Palette } from '../charts/palette';
import { useJob } from '../job/job-provider';
import { drawingSvg } from '../save/drawing-svg';
import { ControlChoices } from './control-choices';
import { controlCsv } from './control-csv';
import { ControlTable } from './control-table';
import { runName } from './run-name';
import { SaveChart } from './save-chart';
import styles from './runs.module.css';

/** The control chart of a run: its plots, where its limits come from, what it signals, and its choices. */
export function ControlSection({ run }: { run: RunView }) {
  const view = useMemo(() => controlView(run), [run]);
  return (
    <section
      className={`${styles.chart} ${run.run.control === 'none' ? 'not-on-paper' : ''}`}
      aria-label="Control chart"
    >
      <h2 className={styles.section}>
        {run.run.control === 'none' ? 'Control chart' : controlNames[run.run.control]}
      </h2>
      {view.kind === 'too little' && (
        <p className="t-sentence">{noControlWords({ ...view, grouped: isGrouped(run) })}</p>
      )}
      {view.kind === 'chart' && <Plots run={run} chart={view} />}
      <details className={`${styles.more} not-on-paper`}>
        <summary>
          {run.run.control === 'none' ? 'Choose one' : 'Chart, groups, limits, rules'}
        </summary>
        <ControlChoices key={run.run.version} run={run} />
      </details>
    </section>
  );
}

function Plots({ run, chart }: { run: RunView; chart: ControlChart }) {
  const { view, chosen } = useJob();
  const box = useRef<HTMLDivElement>(null);
  const { control, grouped } = chart;
  const data = useMemo(() => controlChartData(run, chart, chosen), [run, chart, chosen]);
  const markOf = (turn: number) => run.pieces.find(({ ordinal }) => ordinal === turn)?.mark ?? '';
  const limits = limitsWords(
    {
      ...run.run,
      ...chart,
      baseMarks: [markOf(chart.base.from), markOf(chart.base.to)],
    },
    turnWord(run.features),
  );
  const signals = signalRuns(chart).map(({ first, last, points }) =>
    signalWords(
      {
        first: {
          ...first,
          change:
            first.change === null
              ? null
              : {
                  beganMark: first.change.beganMark,
                  meanPm: run.nominalPm + first.change.meanMm * 1e9,
                },
        },
        last,
        points,
      },
      control,
      chosen,
    ),
  );
  const within = grouped && run.run.groupOf === 'readings' ? [withinPieceWords] : [];
  const notes = [
    ...within,
    ...chart.straddling.map(straddleWords),
    ...chart.lineless.map(linelessWords),
    ...chart.short.map((group) => shortGroupWords(group, run.run.together)),
  ];
  const settings = chartSettingSays(control, run.run, chosen.decimal);
  const names = trackNames(control, grouped);
  const said = signals.length === 0 ? 'No signal.' : signals.join(' ');
  const title = `Control chart, ${names.main}, ${chart.main.length} points. ${limits} ${said}`;
  const plots = data.spread === null ? [data.main] : [data.main, data.spread];
  return (
    <>
      <div ref={box}>
        <Plot
          data={data.main}
          title={title}
          table={<ControlTable chart={chart} track="main" run={run} />}
          height="half"
        />
        {data.spread !== null && (
          <Plot
            data={data.spread}
            title={`Control chart, ${names.spread}, ${chart.spread!.length} points.`}
            table={<ControlTable chart={chart} track="spread" run={run} />}
            height="low"
          />
        )}
      </div>
      <p className="t-sentence">{limits}</p>
      {settings !== null && <p className="t-sentence">{settings}</p>}
      {signals.length === 0 ? (
        <p className="t-sentence">No signal.</p>
      ) : (
        <ul className={styles.signals} aria-label="Signals">
          {signals.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      {notes.map((says) => (
        <p key={says} className="t-sentence">
          {says}
        </p>
      ))}
      <SaveChart
        of={`${view.sheet.job.name} ${runName(view, run)} control chart`}
        box={box}
        svg={() => drawingSvg(plots.map(controlDrawing), title)}
        csv={() => controlCsv(chart, run.nominalPm, chosen.unit)}
      />
    </>
  );
}

function Plot(props: {
  data: ControlPlotData;
  title: string;
  table: React.ReactNode;
  height: 'half' | 'low';
}) {
  const { data, title, table, height } = props;
  const config = useCallback((palette: Palette) => controlChartConfig(data, palette), [data]);
  return (
    <>
      <p className={styles.remark}>{data.heightTitle}</p>
      <Chart title={title} config={config} table={table} height={height} />
    </>
  );
}
