'use client';

import { useMemo, useState } from 'react';
import { lastPiece } from '@/lib/rules/last-piece';
import { nextMeasure } from '@/lib/rules/next-measure';
import type { OddPieces } from '@/lib/rules/odd-pieces';
import type { RunView } from '@/lib/rules/run-view';
import { steadyOffset } from '@/lib/rules/steady-offset';
import { zoneRun } from '@/lib/rules/zone-run';
import { capital } from '@/lib/text/capital';
import { slopeFigure } from '@/lib/text/drift-words';
import { oddFirstWords } from '@/lib/text/odd-words';
import { lastPieceWords, nextMeasureWords } from '@/lib/text/run-advice-words';
import { chartStepPm } from '@/lib/text/chart-step';
import { turnWord } from '@/lib/text/turn-word';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { LinkButton } from '../primitives/link-button';
import { Panel } from '../primitives/panel';
import { FittedStrip } from '../strip/fitted-strip';
import { CapabilityPanel } from './capability-panel';
import { EffectPanel } from './effect-panel';
import { NoteEvent } from './note-event';
import { OddPanel } from './odd-panel';
import { OffsetFigures } from './offset-figures';
import { runSays } from './run-says';
import styles from './runs.module.css';
import { ZonesPanel } from './zones-panel';

/** What the run says: what to do next, the figures behind it, the stretch on the drawn limits. */
export function RunSide({ run, odd }: { run: RunView; odd: OddPieces }) {
  const { chosen } = useJob();
  const [noting, setNoting] = useState(false);
  const steady = useMemo(() => steadyOffset(run), [run]);
  const words = runSays(run, chosen);
  const next = nextMeasure(run);
  const each = turnWord(run.features);
  const last = useMemo(() => lastPiece(run), [run]);
  // By zones, the zones alone say what to do: moving for the drift as well would be moving too often.
  const known = useMemo(() => zoneRun(run), [run]);
  const zones = run.run.zones ? known : null;
  const place =
    zones === null
      ? (next?.place ?? null)
      : (run.pieces.find(({ ordinal }) => ordinal === zones.nextOrdinal) ?? null);
  const unsettled = odd.odd.filter(({ saidRight, point }) => !saidRight && !point.earlier);
  const bench = `/jobs/${run.run.jobId}/bench?feature=`;
  return (
    <div className={styles.side}>
      {zones !== null && <ZonesPanel run={run} zones={zones} />}
      {zones === null && (
        <Panel title={words.title} decide={words.decide}>
          <p className="t-sentence">{words.says}</p>
          {unsettled.length > 0 && (
            <p className="t-sentence">{oddFirstWords(unsettled.map(({ point }) => point.mark))}</p>
          )}
          {run.offset !== null && next !== null && (
            <OffsetFigures
              run={run}
              onDiameterPm={run.offset.onDiameterPm}
              onDialPm={run.offset.onDialPm}
              then={{
                mark: markAfter(run, run.offset.afterOrdinal),
                sizePm: run.offset.restartPm,
              }}
            />
          )}
          {steady !== null && (
            <OffsetFigures
              run={run}
              onDiameterPm={steady.onDiameterPm}
              onDialPm={steady.onDialPm}
              then={{ mark: run.nextPiece?.mark ?? 'the next', sizePm: steady.thenPm }}
            />
          )}
          {last !== null && <p className={styles.remark}>{lastPieceWords(last, chosen)}</p>}
          {next !== null && <p className={styles.remark}>{nextMeasureWords({ ...next, each })}</p>}
        </Panel>
      )}
      <OddPanel run={run} found={odd} />
      <EffectPanel run={run} />
      {run.drift?.kind === 'line' && <DriftFigures run={run} />}
      {run.points.length > 0 && <Stretch run={run} />}
      <div className={`${styles.buttons} not-on-paper`}>
        {place !== null && (
          <LinkButton kind="main" href={`${bench}${place.feature.id}&piece=${place.id}`}>
            Log {place.mark}
          </LinkButton>
        )}
        <LinkButton href={`/runs/${run.run.id}`}>Look closer</LinkButton>
        <Button onClick={() => setNoting(true)} aria-expanded={noting}>
          Note an event
        </Button>
      </div>
      {noting && <NoteEvent run={run} onDone={() => setNoting(false)} />}
      {run.points.length > 0 && <CapabilityPanel run={run} />}
      {zones === null && known !== null && (
        <div className="not-on-paper">
          <ZonesPanel run={run} zones={known} />
        </div>
      )}
    </div>
  );
}

function markAfter(run: RunView, ordinal: number): string {
  return run.pieces.find((piece) => piece.ordinal === ordinal + 1)?.mark ?? 'the next';
}

function DriftFigures({ run }: { run: RunView }) {
  const { chosen } = useJob();
  if (run.drift?.kind !== 'line') return null;
  const { slopeMmPerPiece, slopeIntervalMmPerPiece: range, scatterMm, pieces } = run.drift;
  const each = turnWord(run.features);
  const upward = slopeMmPerPiece >= 0;
  const ends = upward ? [range.low, range.high] : [-range.high, -range.low];
  const end = (mm: number) => `${mm < 0 ? '\u2212' : ''}${slopeFigure(mm, chosen)}`;
  return (
    <Panel>
      <dl className={styles.facts}>
        <div className={styles.fact}>
          <dt>
            {upward ? 'Growing' : 'Shrinking'}, each {each}
          </dt>
          <dd>
            <b>{slopeFigure(slopeMmPerPiece, chosen)}</b>
          </dd>
        </div>
        <div className={styles.fact}>
          <dt>Likely range</dt>
          <dd>
            {end(ends[0]!)} to {end(ends[1]!)}
          </dd>
        </div>
        <div className={styles.fact}>
          <dt>Scatter about the line</dt>
          <dd>{slopeFigure(scatterMm, chosen)}</dd>
        </div>
        <div className={styles.fact}>
          <dt>{capital(each)}s since the last event</dt>
          <dd>{pieces}</dd>
        </div>
      </dl>
    </Panel>
  );
}

function Stretch({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const since = run.points.filter((point) => !point.earlier);
  const { lowerPm, upperPm } = run.limits;
  if (since.length === 0 || (lowerPm === null && upperPm === null)) return null;
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
            lowerPm,
            upperPm,
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
