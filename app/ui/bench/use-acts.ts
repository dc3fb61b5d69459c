'use client';

import { useRef } from 'react';
import { isActRepeat, type Act } from '@/lib/rules/act-repeat';
import { entryAlong } from '@/lib/rules/entry-along';
import { isSamePlace } from '@/lib/rules/entry-plan';
import { entryStep } from '@/lib/rules/entry-step';
import { lastEntryWords, takenBackWords } from '@/lib/text/bench-where';
import { shownLength } from '@/lib/text/shown-size';
import { useCutSwitch } from '../cut/cut-switch';
import type { Over } from './bench-over';
import { lastRead } from './last-read';
import type { Bench } from './use-bench';
import { nameOf } from './use-commit';
import type { useCut } from './use-cut';
import type { BenchActs } from './use-entry';
import { plainCorrection } from './use-fresh';

/** What a key or a tap does on the bench besides typing. */
export function useActs(
  bench: Bench,
  cut: ReturnType<typeof useCut>,
  setOver: (over: Over | null) => void,
) {
  const { last, where, feature, cell, held, fresh, chosen } = bench;
  const ways = useCutSwitch();
  const isToMake = (bench.partner?.target ?? null) !== null || cell.verdict?.state === 'to cut';
  const canCut = isToMake && cell.readings.length > 0 && held === null;

  const correct = (kind: 'void' | 'restore' | 'count', readingId: string, reason = '') => {
    const { personId } = chosen;
    fresh.correction({ ...plainCorrection, kind, readingId, reason, personId });
  };
  const lastBack = useRef<Act | null>(null);
  const voidLast = (): string | null => {
    const read = lastRead(bench.view.sheet.job.id);
    // Another device may have read this piece since: what is taken back is what was entered here.
    const own = cell.readings.find(({ id }) => id === read?.id) ?? last;
    // A key that bounces would put back what it has just struck out, or after a cut strike out the reading before.
    const isBounce = (what: string) => {
      const now = { what, atMs: performance.now() };
      const before = lastBack.current;
      lastBack.current = now;
      return isActRepeat(before, now) || isActRepeat(before, { ...now, what: 'cut' });
    };
    if (own !== null) {
      if (isBounce(own.id)) return null;
      const isStruck = own.state === 'struck';
      correct(isStruck ? 'restore' : 'void', own.id);
      return own === last || bench.blind !== null
        ? null
        : takenBackWords(shownLength(own.valuePm, own.resolutionPm, chosen), !isStruck);
    }
    const cutLast = cut.lastNoted();
    if (cutLast !== null) {
      if (!isBounce('cut')) void cut.strike(cutLast);
      return null;
    }
    // Nothing here to take back: the entry made last may be on the piece before.
    if (read === null || (read.pieceId === bench.piece.id && read.featureId === feature.id)) {
      return null;
    }
    where.goTo(read);
    return lastEntryWords(nameOf(bench, read));
  };
  const again = () => {
    if (held !== null) correct('void', held.id, 'measured again');
    const at = held ?? last;
    if (at !== null) bench.pick({ station: at.station, direction: at.direction });
  };
  const goBeside = (by: 1 | -1) => {
    const beside = where.beside(by);
    if (beside !== null) where.goTo(beside);
  };
  const acts: BenchActs = {
    void: voidLast,
    again,
    move(along, by) {
      const place = entryStep(feature, bench.next ?? last, { along, by });
      if (place !== null) bench.pick(place);
      else if (along === 'plan') goBeside(by);
    },
    cell: goBeside,
    along(what, by) {
      const at = { pieceId: bench.piece.id, featureId: feature.id };
      const to = entryAlong(bench.view.parts, at, what, by);
      if (to !== null) where.goTo(to);
    },
    springPass() {
      if (canCut) void cut.note(true);
    },
    cut() {
      // What the disk would not take stands here until it does: nobody leaves it behind unseen.
      if (fresh.list.every(({ failure }) => failure === null)) ways?.toCut(cell);
    },
    listKeys: () => setOver({ kind: 'keys' }),
    thisDevice: () => setOver({ kind: 'device' }),
    closeLists: () => setOver(null),
    noteCut: cut.note,
  };
  /** A place that was read shows what can be said of it; a free one is where the next reading goes. */
  const pick = (station: string, direction: string): boolean => {
    const place = { station, direction };
    const isRead =
      bench.blind === null && cell.readings.some((reading) => isSamePlace(reading, place));
    if (isRead) setOver({ kind: 'reading', place });
    else bench.pick(place);
    return isRead;
  };
  return { acts, correct, voidLast, pick, isToMake, canCut };
}
