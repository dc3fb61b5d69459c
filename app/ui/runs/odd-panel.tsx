'use client';

import { useState } from 'react';
import type { OddPiece, OddPieces } from '@/lib/rules/odd-pieces';
import { oddReadings } from '@/lib/rules/odd-readings';
import { oddSlip } from '@/lib/rules/odd-slip';
import { counted } from '@/lib/rules/cells';
import type { RunView, SetAside } from '@/lib/rules/run-view';
import { asideReason, oddAnswers, oddSays, oddWords, withWithoutWords } from '@/lib/text/odd-words';
import { turnWord } from '@/lib/text/turn-word';
import { plainCorrection } from '../bench/use-fresh';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { LinkButton } from '../primitives/link-button';
import { Field } from '../primitives/field';
import { Panel } from '../primitives/panel';
import styles from './runs.module.css';

type Props = { run: RunView; found: OddPieces };

/** Pieces off the line: measured again, said to be right, or set aside; and the drift both ways. */
export function OddPanel({ run, found }: Props) {
  const { chosen } = useJob();
  if (found.odd.length === 0 && found.aside.length === 0) return null;
  return (
    <>
      {found.odd.map((odd) => (
        <OddOne key={odd.point.ordinal} run={run} odd={odd} />
      ))}
      <Panel title={found.odd.length === 0 ? 'Set aside' : 'With it and without'} level={3}>
        {found.aside.map((aside) => (
          <AsideOne key={aside.ordinal} aside={aside} />
        ))}
        {found.drift !== null && (
          <dl className={styles.both}>
            {withWithoutWords(found.drift, turnWord(run.features), chosen).map(
              ({ label, figure }) => (
                <div key={label} className={styles.pair}>
                  <dt>{label}</dt>
                  <dd>{figure}</dd>
                </div>
              ),
            )}
          </dl>
        )}
      </Panel>
    </>
  );
}

function OddOne({ run, odd }: { run: RunView; odd: OddPiece }) {
  const { view, chosen } = useJob();
  const keepCorrection = useCorrection();
  const slip = oddSlip(view, odd, chosen.decimal);
  const facts =
    slip === null ? null : { kind: slip.kind, text: slip.reading.text, insteadPm: slip.insteadPm };
  const [reason, setReason] = useState(asideReason(facts));
  const { point } = odd;
  const words = oddWords(
    { mark: point.mark, offPm: odd.offPm, saidRight: odd.saidRight, slip: facts },
    chosen,
  );
  const readings = counted(point.cell.readings);
  // One reading that a slip explains is set aside by itself; else those off the line.
  const wrong = slip !== null && slip.kind !== null ? [slip.reading] : oddReadings(odd);
  const bench = `/jobs/${run.run.jobId}/bench?feature=${point.feature.id}&piece=${point.piece.id}`;
  return (
    <Panel title={words.title} decide={!odd.saidRight}>
      <p className="t-sentence">{words.says}</p>
      {!odd.saidRight && (
        <>
          <p className={styles.remark}>{oddSays}</p>
          <Field
            label="Reason"
            value={reason}
            maxLength={200}
            onChange={(event) => setReason(event.target.value)}
          />
          <div className={styles.answers}>
            <LinkButton kind="warm" href={bench}>
              {oddAnswers.again}
            </LinkButton>
            <Button
              onClick={() => {
                for (const { id } of readings) keepCorrection('count', id, 'right, off the line');
              }}
            >
              {oddAnswers.right}
            </Button>
            <Button
              disabled={reason.trim() === ''}
              onClick={() => {
                for (const { id } of wrong) keepCorrection('void', id, reason.trim());
              }}
            >
              {oddAnswers.aside}
            </Button>
          </div>
        </>
      )}
    </Panel>
  );
}

function AsideOne({ aside }: { aside: SetAside }) {
  const keepCorrection = useCorrection();
  // What was struck for another reason, a slip at the bench, stays struck.
  const struck = aside.cell.readings.filter(
    ({ state, reason }) => state === 'struck' && reason === aside.reason,
  );
  return (
    <p className={styles.aside}>
      <span>
        <b className="struck">{aside.mark}</b> {aside.reason === '' ? 'set aside' : aside.reason}
      </span>
      <button
        type="button"
        onClick={() => {
          for (const { id } of struck) keepCorrection('restore', id, '');
        }}
      >
        Put back
      </button>
    </p>
  );
}

/** A correction of a reading, kept on this device and sent like every other. */
function useCorrection() {
  const { view, chosen, keep } = useJob();
  return (kind: 'void' | 'count' | 'restore', readingId: string, reason: string) => {
    const row = { ...plainCorrection, kind, readingId, reason, personId: chosen.personId };
    void keep({ kind: 'correction', jobId: view.sheet.job.id, row });
  };
}
