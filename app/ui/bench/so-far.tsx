'use client';

import { entryForm } from '@/lib/rules/entry-form';
import { entryReading } from '@/lib/rules/entry-reading';
import { leftToTarget } from '@/lib/rules/left-to-target';
import { metalLeftSide } from '@/lib/rules/verdict';
import { stepToTarget } from '@/lib/text/bench-entry';
import { shapeWords } from '@/lib/text/bench-shape';
import { clearanceFigure } from '@/lib/text/fit-words';
import { shownLength, shownSize } from '@/lib/text/shown-size';
import styles from './so-far.module.css';
import type { Bench } from './use-bench';

type Props = { bench: Bench; typed: string };

/** The size so far with its uncertainty, and beside it what it means: the clearance, what is left, the shape. */
export function SoFar({ bench, typed }: Props) {
  const { cell, chosen, resolutionPm, last } = bench;
  const remarks = remarksOf(bench, typed);
  if (last === null && remarks.length === 0) return <div className={styles.line} />;
  const size = cell.size === null ? null : shownSize(cell.size, resolutionPm, chosen);
  return (
    <div className={styles.line} data-live={typed !== '' || undefined}>
      <p className={styles.size}>
        {size === null ? (
          noSize(bench)
        ) : (
          <>
            <span className={styles.long}>Size so far</span>
            <span className={styles.short} data-so-far>
              So far
            </span>
            <b className={styles.figure}>{size.value}</b>
            <span>± {size.plusMinus}</span>
          </>
        )}
      </p>
      {remarks.map((remark, index) => (
        <p key={remark} className={index === 0 ? styles.remark : styles.further} data-remark>
          {remark}
        </p>
      ))}
    </div>
  );
}

function noSize({ cell, gauge }: Bench): string {
  const counts = cell.readings.filter(({ state }) => state === 'counted').length;
  if (cell.readings.length === 0) return '';
  if (counts === 0) return 'Nothing counted yet';
  return `No size yet: take three with ${gauge?.name ?? 'the gauge'}`;
}

/** The first is the one a phone has room for. */
function remarksOf(bench: Bench, typed: string): string[] {
  const { cell, chosen, feature, partner, held, resolutionPm } = bench;
  const live = stepOf(bench, typed);
  if (live !== null) return [live];
  if (held !== null && cell.size !== null) {
    return [`without ${shownLength(held.valuePm, held.resolutionPm, chosen)}`];
  }
  const remarks: string[] = [];
  const target = partner?.target ?? null;
  if (target !== null && cell.size !== null) {
    const leftPm = leftToTarget(cell, target, partner!.fit.fit.governs, bench.view.cells);
    if (leftPm !== null && leftPm > 0)
      remarks.push(`${shownLength(leftPm, resolutionPm, chosen)} left`);
  } else if (partner !== null && partner.pair !== null && cell.size !== null) {
    const { clearancePm } = partner.pair;
    const figure = clearanceFigure(Math.abs(clearancePm), chosen);
    const beside = partner.side === 'external' ? 'in' : 'with';
    remarks.push(
      `${figure} ${clearancePm < 0 ? 'tight' : 'clear'} ${beside} ${partner.piece.mark}`,
    );
  }
  const form = entryForm(cell, feature);
  if (form !== null) {
    const { stations, directions } = feature;
    remarks.push(...shapeWords({ ...form, stations, directions, resolutionPm }, chosen));
  }
  return remarks.slice(0, 3);
}

/** While a length is being typed: what it would leave to the aim. */
function stepOf(bench: Bench, typed: string): string | null {
  const { feature, chosen, unit, partner, gauge, resolutionPm } = bench;
  const aimPm = partner?.aimPm ?? null;
  if (aimPm === null || typed === '') return null;
  const setting = {
    gauge,
    decimal: chosen.decimal,
    unit,
    nominalPm: feature.nominalPm,
    kind: feature.kind,
  };
  const read = entryReading(typed, setting, bench.lastDigits ? bench.lastFacts : null);
  if (read.kind !== 'length') return null;
  return stepToTarget(
    read.meaning.sizePm,
    aimPm,
    (partner?.target ?? null) === null ? null : metalLeftSide(feature.kind),
    resolutionPm,
    chosen,
  );
}
