'use client';

import { askedOnDial } from '@/lib/rules/cuts/asked-on-dial';
import type { CutView } from '@/lib/rules/cuts/cut-view';
import { dialUnit, type Slide } from '@/lib/rules/cuts/slide';
import { afreshWords } from '@/lib/text/cut-screen-words';
import {
  changedOnWords,
  changedWords,
  cutCells,
  nextCells,
  type CutCells,
} from '@/lib/text/cut-log-words';
import type { Shown } from '@/lib/text/shown-size';
import { useJob } from '../job/job-provider';
import { useStrike } from '../job/use-strike';
import styles from './cut.module.css';
import type { OnDial } from './use-put-on';

type Props = { cut: CutView; slide: Slide | null; onDial: OnDial | null; shown: Shown };

/** What was asked of each cut, what came off and what was left; the next one last, with what is expected of it. */
export function CutLog({ cut, slide, onDial, shown }: Props) {
  const { view } = useJob();
  const { strike, trouble, busy } = useStrike('cut');
  const { steps, resolutionPm, aim } = cut;
  const last = steps.at(-1);
  // A cut that was measured stands; one that was not can still be said not to have been taken.
  const canTakeBack = last !== undefined && last.afterPm === null;
  if (steps.length === 0 && onDial === null) return null;
  const elsewhere = cut.changedElsewhere;
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const changedBefore = (number: number) =>
    elsewhere?.before === number - 1 && (
      <tr key="elsewhere" className={styles.afresh}>
        <td colSpan={5}>
          {afreshWords(changedOnWords(elsewhere.changed, markOf(elsewhere.pieceId)))}
        </td>
      </tr>
    );
  return (
    <section aria-label="Cuts">
      <table className={styles.cuts}>
        <caption className="unseen">Asked and got, on diameter</caption>
        <thead>
          <tr>
            <th scope="col">Cut</th>
            <th scope="col">asked</th>
            <th scope="col">got</th>
            <th scope="col">of asked</th>
            <th scope="col">size after</th>
          </tr>
        </thead>
        <tbody>
          {steps.map((step) => [
            changedBefore(step.number),
            step.afresh && (
              <tr key={`${step.cut.id} afresh`} className={styles.afresh}>
                <td colSpan={5}>{afreshWords(changedWords(step.cut.changed ?? null))}</td>
              </tr>
            ),
            <Line
              key={step.cut.id}
              number={step.number}
              cells={cutCells(
                { ...step, onDial: askedOnDial(step.cut, shown.unit) },
                resolutionPm,
                shown,
              )}
            />,
          ])}
          {changedBefore(steps.length + 1)}
          {onDial !== null && (
            <Line
              next
              number={steps.length + 1}
              cells={nextCells(
                {
                  askedPm: onDial.askedPm,
                  onDial:
                    slide === null
                      ? null
                      : { dialPm: onDial.dialPm, unit: dialUnit(slide, shown.unit) },
                  expected:
                    onDial.expected === null || cut.learnt.learned.kind === 'nothing'
                      ? null
                      : {
                          valuePm: onDial.expected.valuePm,
                          takesPm: Math.abs(onDial.expected.valuePm - aim.now!.valuePm),
                          ratio: cut.learnt.learned.mean,
                        },
                },
                resolutionPm,
                shown,
              )}
            />
          )}
        </tbody>
      </table>
      {canTakeBack && (
        <p className={styles.takeBack}>
          <button
            type="button"
            className={styles.textButton}
            disabled={busy}
            onClick={() => void strike(last.cut)}
          >
            Cut {last.number} was not taken
          </button>
        </p>
      )}
      {trouble === null ? null : <p role="alert">{trouble}</p>}
    </section>
  );
}

function Line({
  number,
  cells,
  next = false,
}: {
  number: number;
  cells: CutCells;
  next?: boolean;
}) {
  return (
    <tr className={next ? styles.next : undefined}>
      <th scope="row">
        {number}
        {next && <span className="unseen"> next</span>}
      </th>
      <td>
        {cells.asked}
        {cells.dial === '' ? null : <span className={styles.asked}> {cells.dial}</span>}
      </td>
      <td>{cells.got}</td>
      <td>{cells.ratio}</td>
      <td>{cells.after}</td>
    </tr>
  );
}
