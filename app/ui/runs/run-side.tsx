'use client';

import { useState } from 'react';
import type { RunView } from '@/lib/rules/run-view';
import { driftWords, slopeFigure } from '@/lib/text/drift-words';
import { shownLength } from '@/lib/text/shown-size';
import { chartStepPm } from '../charts/run-chart-data';
import { useJob } from '../job/job-provider';
import { Button, LinkButton } from '../primitives/button';
import { Panel } from '../primitives/panel';
import { FittedStrip } from '../strip/fitted-strip';
import { NoteEvent } from './note-event';
import styles from './runs.module.css';
import { ZonesPanel } from './zones-panel';

/** What the run says: what to do next, the figures behind it, the stretch on the drawn limits. */
export function RunSide({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const [noting, setNoting] = useState(false);
  const words = driftWords(run, chosen);
  const step = chartStepPm[chosen.unit];
  const next = run.nextPiece;
  const waits = run.piecesLeft !== null && next !== null;
  const bench = `/jobs/${run.run.jobId}/bench?feature=${run.feature.id}`;
  return (
    <div className={styles.side}>
      <Panel title={words.title} decide={waits}>
        <p className="t-sentence">{words.says}</p>
        {run.offset !== null && next !== null && (
          <>
            <dl className={styles.offset}>
              <div>
                <dt>Offset, on diameter</dt>
                <dd className={styles.offsetMain}>{signed(run.offset.onDiameterPm)}</dd>
              </div>
              <div>
                <dt>
                  {run.run.dial === 'radius' ? 'Radius' : 'Diameter'} dial,{' '}
                  {run.offset.onDialPm < 0 ? 'smaller' : 'larger'}
                </dt>
                <dd className={styles.offsetDial}>
                  {shownLength(Math.abs(run.offset.onDialPm), step, chosen)}
                </dd>
              </div>
            </dl>
            <p className={styles.remark}>
              Then {markAfter(run, run.offset.afterOrdinal)} comes out near{' '}
              {shownLength(run.offset.restartPm, step, chosen)}: an estimate.
            </p>
          </>
        )}
      </Panel>
      <ZonesPanel run={run} />
      {run.drift?.kind === 'line' && <DriftFigures run={run} />}
      {run.points.length > 0 && <Stretch run={run} />}
      <div className={styles.buttons}>
        {next !== null && (
          <LinkButton kind="main" href={`${bench}&piece=${next.id}`}>
            Log {next.mark}
          </LinkButton>
        )}
        <LinkButton href={`/runs/${run.run.id}`}>Look closer</LinkButton>
        <Button onClick={() => setNoting(true)} aria-expanded={noting}>
          Note an event
        </Button>
      </div>
      {noting && <NoteEvent run={run} onDone={() => setNoting(false)} />}
    </div>
  );

  function signed(pm: number): string {
    return shownLength(pm, step, chosen, 'always');
  }
}

function markAfter(run: RunView, ordinal: number): string {
  return run.pieces.find((piece) => piece.ordinal === ordinal + 1)?.mark ?? 'the next';
}

function DriftFigures({ run }: { run: RunView }) {
  const { chosen } = useJob();
  if (run.drift?.kind !== 'line') return null;
  const { slopeMmPerPiece, slopeIntervalMmPerPiece: range, scatterMm, pieces } = run.drift;
  const upward = slopeMmPerPiece >= 0;
  const ends = upward ? [range.low, range.high] : [-range.high, -range.low];
  const end = (mm: number) => `${mm < 0 ? '\u2212' : ''}${slopeFigure(mm, chosen)}`;
  return (
    <Panel>
      <dl className={styles.facts}>
        <dt>{upward ? 'Growing' : 'Shrinking'}, each piece</dt>
        <dd>
          <b>{slopeFigure(slopeMmPerPiece, chosen)}</b>
        </dd>
        <dt>Likely range</dt>
        <dd>
          {end(ends[0]!)} to {end(ends[1]!)}
        </dd>
        <dt>Scatter about the line</dt>
        <dd>{slopeFigure(scatterMm, chosen)}</dd>
        <dt>Pieces since the last event</dt>
        <dd>{pieces}</dd>
      </dl>
    </Panel>
  );
}

function Stretch({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const since = run.points.filter((point) => !point.earlier);
  if (since.length === 0) return null;
  return (
    <div className={styles.stretch}>
      <Panel>
        <p className={styles.remark}>Since the last event, on the drawn limits</p>
        <FittedStrip
          name={`${run.feature.name}, since the last event`}
          data={{
            unit: chosen.unit,
            decimal: chosen.decimal,
            resolutionPm: chartStepPm[chosen.unit],
            lowerPm: run.limits.lowerPm,
            upperPm: run.limits.upperPm,
            readings: since.map(({ valuePm }, index) => ({
              valuePm,
              state: 'counted',
              last: index === since.length - 1,
            })),
            size: null,
          }}
        />
      </Panel>
    </div>
  );
}
