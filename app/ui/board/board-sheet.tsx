'use client';

import { useState } from 'react';
import { boardSummary } from './board-summary';
import { DrawingPanel } from '../drawing/drawing-panel';
import { useJob } from '../job/job-provider';
import { nextWords } from '../job/next-words';
import { LinkButton } from '../primitives/link-button';
import { SheetFrame } from '../job/sheet-frame';
import { DecidePanel } from './decide-panel';
import { DeparturePanel } from './departure-panel';
import { PartTable } from './part-table';
import styles from './board.module.css';

/** Every piece against every feature: what is made, how surely, what is next, what is to decide. */
export function BoardSheet() {
  const { view, chosen } = useJob();
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set());
  const next = nextWords(view, chosen);
  const { job, departures } = view.sheet;
  const drawing = [job.drawing, job.revision === '' ? '' : `revision ${job.revision}`];
  const turn = (partId: string) => {
    const now = new Set(turned);
    if (!now.delete(partId)) now.add(partId);
    setTurned(now);
  };
  return (
    <SheetFrame
      current="Board"
      number={1}
      left={[
        { label: 'Sizes at', value: 'as read' },
        ...(job.drawing === ''
          ? []
          : [{ label: 'Drawing', value: drawing.filter(Boolean).join(', ') }]),
      ]}
      right={next === null ? [] : [{ label: 'Next', value: next }]}
    >
      <h1 className="unseen">Board of {job.name}</h1>
      <div className={styles.columns}>
        <div className={styles.waits}>
          <DecidePanel />
        </div>
        <div className={styles.table}>
          {view.parts.map((part) => (
            <PartTable
              key={part.part.id}
              part={part}
              open={boardSummary.standsOpen(view, part) !== turned.has(part.part.id)}
              summary={boardSummary.words(view, part, chosen)}
              onTurn={() => turn(part.part.id)}
            />
          ))}
        </div>
        <div className={styles.side}>
          <DrawingPanel />
          {departures
            .filter((departure) => departure.struckAt === null)
            .map((departure) => (
              <DeparturePanel key={departure.id} departure={departure} />
            ))}
          <LinkButton href={`/jobs/${job.id}/edit`}>Change the job as drawn</LinkButton>
        </div>
      </div>
    </SheetFrame>
  );
}
