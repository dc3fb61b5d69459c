'use client';

import { useEffect, useState } from 'react';
import { placeWords } from '@/lib/text/bench-place';
import { whereWords } from '@/lib/text/bench-where';
import { shownLength } from '@/lib/text/shown-size';
import { lastRead } from './last-read';
import type { Bench } from './use-bench';
import { nameOf } from './use-commit';
import styles from './where-was.module.css';

type Props = { bench: Bench; typed: string };

/** A page that was out of sight for so long has been left. */
const awayMs = 10 * 60_000;

/** Where a person was who comes back, until the next thing is typed or it is tapped away. */
export function WhereWas({ bench, typed }: Props) {
  const { where, fresh } = bench;
  const [isShown, setShown] = useState(false);
  const { cameBack } = where;
  useEffect(() => {
    // oxlint-disable-next-line react/set-state-in-effect -- it is known only once the page is in the browser
    if (cameBack) setShown(true);
  }, [cameBack]);
  useReturn(() => setShown(true));
  if (isShown && (typed !== '' || fresh.list.length > 0)) setShown(false);
  // What is on this device's disk comes a moment after the page.
  const says = isShown ? wordsOf(bench) : null;
  if (says === null) return null;
  return (
    <div className={styles.where} role="status">
      <p>{says}</p>
      <button type="button" className={styles.on} onClick={() => setShown(false)}>
        Go on
      </button>
    </div>
  );
}

/** Calls back when the page is seen again after it was out of sight for long. */
function useReturn(act: () => void): void {
  useEffect(() => {
    let hiddenAtMs: number | null = null;
    const changed = () => {
      if (document.visibilityState === 'hidden') hiddenAtMs = Date.now();
      else if (hiddenAtMs !== null && Date.now() - hiddenAtMs > awayMs) act();
    };
    document.addEventListener('visibilitychange', changed);
    return () => document.removeEventListener('visibilitychange', changed);
  });
}

/** What was read last on this device in this job, and what is next; null where nothing was. */
function wordsOf(bench: Bench): string | null {
  const { view, piece, feature, next, nextCell, chosen, blind } = bench;
  const read = lastRead(view.sheet.job.id);
  const cell = read === null ? bench.cell : view.cell(read.pieceId, read.featureId);
  const reading = cell.readings.findLast(({ state }) => state !== 'struck') ?? cell.readings.at(-1);
  if (reading === undefined) return null;
  const of = view.sheet.features.find(({ id }) => id === cell.featureId) ?? feature;
  const isHere = cell.pieceId === piece.id && cell.featureId === feature.id;
  const here = isHere ? '' : `${piece.mark} ${feature.name.toLowerCase()}`;
  const place = next === null ? '' : placeWords(next, feature);
  return whereWords({
    mark: view.sheet.pieces.find(({ id }) => id === cell.pieceId)?.mark ?? piece.mark,
    feature: of.name,
    place: placeWords(reading, of),
    figure: blind === null ? shownLength(reading.valuePm, reading.resolutionPm, chosen) : null,
    at: reading.deviceTime,
    now: new Date(),
    next:
      next !== null
        ? [here, place].filter((part) => part !== '').join(', ') || feature.name.toLowerCase()
        : nextCell === null
          ? ''
          : nameOf(bench, nextCell),
  });
}
