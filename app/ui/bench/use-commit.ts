'use client';

import { useLayoutEffect, useRef } from 'react';
import { entryCell } from '@/lib/rules/entry-cell';
import { looksCut } from '@/lib/rules/entry-cut';
import { entryNext } from '@/lib/rules/entry-next';
import { entryOffer } from '@/lib/rules/entry-offer';
import type { EntryCell } from '@/lib/rules/entry-order';
import { entryPlan, type Place } from '@/lib/rules/entry-plan';
import { entryReading, type EntryQuestionCode } from '@/lib/rules/entry-reading';
import { gaugeMessage } from '@/lib/rules/gauge-message';
import { isEntryRepeat, type EntryCommit } from '@/lib/rules/entry-repeat';
import { slipOf } from '@/lib/rules/slip';
import type { Gauge } from '@/lib/schema/gauge';
import { cutSinceWords, repeatWords, whereFromWords, whoseWords } from '@/lib/text/bench-ask';
import { questionWords, wentOnWords } from '@/lib/text/bench-entry';
import { entryErrorWords, type EntryError } from '@/lib/text/bench-entry-error';
import { placeWords } from '@/lib/text/bench-place';
import { whichGaugeWords } from '@/lib/text/bench-unplaced';
import { shownLength } from '@/lib/text/shown-size';
import { spokenLength } from '@/lib/text/spoken-length';
import type { LengthMeaning } from '@/lib/units/parse-length';
import type { LengthUnit } from '@/lib/units/picometres';
import type { Notice } from './entry-notice';
import { giveFeedback, outcomeOf } from './feedback';
import { rememberRead } from './last-read';
import { sayAloud } from './say-aloud';
import type { Bench } from './use-bench';
import { plainCorrection } from './use-fresh';

/** As the schema takes it: a longer text is no reading. */
const textMax = 64;

type Decided = {
  meaning?: LengthMeaning;
  place?: Place;
  notCut?: boolean;
  kept?: boolean;
  /** What a figure without a unit is in, where the text came from a port and no hand can have typed it. */
  unit?: LengthUnit;
};

/** Something to do once the bench has changed. */
type Waiting = { isReady: (bench: Bench) => boolean; act: () => void };

type Line = {
  /** Shows a notice, or clears it. */
  notify: (notice: Notice | null) => void;
  /** Puts a text back into the line, to be mended or answered; the next figure typed replaces it. */
  putBack: (text: string) => void;
  /** Puts a text beside the line until the gauge it is of is named. */
  wait: (text: string) => void;
  /** Empties the line, where a text was put back and has now been logged. */
  clear: () => void;
};

/**
 * What happens to a text when it is logged: it becomes a reading, or a question, or a sentence. Nothing is
 * guessed and nothing is dropped without a word.
 */
export function useCommit(
  current: Bench,
  line: Line,
  noteCut: (spring: boolean) => Promise<boolean>,
) {
  const before = useRef<EntryCommit | null>(null);
  // An answer may come long after its question: it is judged by the bench as it is then.
  const latest = useRef(current);
  const waiting = useRef<Waiting | null>(null);
  useLayoutEffect(() => {
    latest.current = current;
    const due = waiting.current;
    if (due === null || !due.isReady(current)) return;
    waiting.current = null;
    due.act();
  });

  function refuse(text: string, error: EntryError): void {
    line.putBack(text);
    line.notify({ kind: 'error', says: entryErrorWords(text, error) });
    giveFeedback('not understood');
  }

  function ask(
    text: string,
    title: string,
    answers: { label: string; act: () => void }[],
    otherwise?: { act: () => void; says: string },
  ): void {
    line.putBack(text);
    line.notify({
      kind: 'question',
      title,
      answers: answers.map(({ label, act }) => ({
        label,
        act() {
          line.clear();
          line.notify(null);
          act();
        },
      })),
      ...(otherwise === undefined ? {} : { otherwise }),
    });
    giveFeedback('unsure');
  }

  function judge(typed: string, atMs: number, decided: Decided = {}): void {
    const bench = latest.current;
    const { gauge, feature, chosen, cell } = bench;
    const text = gaugeMessage(typed, gauge);
    const unit = decided.unit ?? bench.unit;
    const setting = {
      gauge,
      decimal: chosen.decimal,
      unit,
      nominalPm: feature.nominalPm,
      kind: feature.kind,
    };
    // No hand leaves figures out of what comes from a port.
    const lastFacts = decided.unit === undefined ? bench.lastFacts : null;
    const read = entryReading(text, setting, bench.lastDigits ? lastFacts : null);
    if (read.kind === 'empty') return line.notify(null);
    if (read.kind === 'begun') {
      return refuse(text, { code: read.aloneSign ? 'alone-sign' : 'no-digits', character: '' });
    }
    if (read.kind === 'error') return refuse(text, read);
    if (text.length > textMax) return refuse(text, { code: 'text-too-long', character: '' });
    if (gauge === null) {
      const unnamed = { text, gaugeId: '', atMs };
      if (decided.kept !== true && isEntryRepeat(before.current, unnamed))
        return askRepeat(unnamed);
      before.current = unnamed;
      line.wait(text);
      return line.notify({ kind: 'error', says: whichGaugeWords(text) });
    }
    const again = (more: Decided) => judge(text, atMs, { ...decided, ...more });
    const askWhich = (code: EntryQuestionCode, meanings: readonly LengthMeaning[]) => {
      const { title, answers } = questionWords(text, code, meanings, chosen);
      const answered = answers.map((label, index) => ({
        label,
        act: () => again({ meaning: meanings[index]! }),
      }));
      ask(text, title, answered);
    };
    const meaning = decided.meaning ?? (read.kind === 'length' ? read.meaning : null);
    if (meaning === null) {
      return read.kind === 'question' ? askWhich(read.code, read.meanings) : undefined;
    }
    if (decided.meaning === undefined && !bench.lastDigits) {
      const facts = bench.slipFacts(gauge, { text, unit: meaning.unit });
      const offered = entryOffer(text, meaning, lastFacts, facts);
      if (offered !== null) return askWhich('last-digits', offered);
    }
    const now = { text, gaugeId: gauge.id, atMs };
    if (decided.kept !== true && isEntryRepeat(before.current, now)) return askRepeat(now);
    const place = decided.place ?? null;
    if (place === null && bench.held !== null) return askWhose(text, again);
    if (place === null && bench.next === null) return askWhere(text, atMs, again);
    const resolutionPm = meaning.resolutionPm ?? gauge.resolutionPm;
    const slip = () => slipAs(text, meaning, gauge);
    if (decided.notCut !== true && looksCut(meaning.sizePm, cell, feature, resolutionPm, slip)) {
      return askCut(text, meaning, again);
    }
    log(text, meaning, place ?? bench.next!, now);
  }

  function slipAs(text: string, { sizePm, resolutionPm, unit }: LengthMeaning, gauge: Gauge) {
    const facts = latest.current.slipFacts(gauge, { text, unit });
    const reading = { text, valuePm: sizePm, resolutionPm: resolutionPm ?? gauge.resolutionPm };
    return slipOf(reading, facts);
  }

  function askRepeat({ text, atMs }: EntryCommit): void {
    line.notify({
      kind: 'repeat',
      says: repeatWords(text),
      keep: () => judge(text, atMs, { kept: true }),
    });
  }

  /** A reading that comes while another is held may be its second measurement, or go on with the plan. */
  function askWhose(text: string, again: (more: Decided) => void): void {
    const bench = latest.current;
    const held = bench.held!;
    const shown = shownLength(held.valuePm, held.resolutionPm, bench.chosen);
    const there = placeWords(held, bench.feature) || bench.feature.name.toLowerCase();
    const next = bench.next;
    const onward = next ?? { station: held.station, direction: held.direction };
    const goesOn = () => again({ place: onward });
    const { title, answers } = whoseWords(text, {
      there,
      held: bench.blind === null ? shown : null,
      next: next === null ? null : placeWords(next, bench.feature),
    });
    const answered = [
      {
        label: answers[0]!,
        act() {
          bench.fresh.correction({
            ...plainCorrection,
            kind: 'void',
            readingId: held.id,
            reason: 'measured again',
            personId: bench.chosen.personId,
          });
          again({ place: { station: held.station, direction: held.direction } });
        },
      },
      { label: answers[1]!, act: goesOn },
    ];
    // Who goes on measuring goes on with the plan: nothing that was read is lost by not looking.
    ask(text, title, answered, {
      act: goesOn,
      says: wentOnWords(text, placeWords(onward, bench.feature)),
    });
  }

  /** Every place has a reading: it may be one more, or the first of the next piece. */
  function askWhere(text: string, atMs: number, again: (more: Decided) => void): void {
    const bench = latest.current;
    const last = bench.last ?? entryPlan(bench.feature)[0]!;
    const here = { station: last.station, direction: last.direction };
    const next = bench.nextCell;
    const { title, answers } = whereFromWords(text, {
      of: bench.plan.of,
      mark: bench.piece.mark,
      place: placeWords(here, bench.feature),
      next: next === null ? null : nameOf(bench, next),
    });
    ask(text, title, [
      { label: answers[0]!, act: () => again({ place: here }) },
      ...(next === null ? [] : [{ label: answers[1]!, act: () => goOn(next, text, atMs) }]),
    ]);
  }

  function askCut(text: string, meaning: LengthMeaning, again: (more: Decided) => void): void {
    const bench = latest.current;
    const shown = shownLength(
      meaning.sizePm,
      meaning.resolutionPm ?? bench.resolutionPm,
      bench.chosen,
    );
    const { title, answers } = cutSinceWords(shown);
    ask(text, title, [
      {
        label: answers[0]!,
        act() {
          const old = bench.cell.readings.at(-1)?.id;
          waiting.current = {
            isReady: ({ cell }) => cell.readings.every(({ id }) => id !== old),
            act: () => again({ notCut: true }),
          };
          void noteCut(false).then((noted) => {
            if (noted) return;
            waiting.current = null;
            line.putBack(text);
          });
        },
      },
      { label: answers[1]!, act: () => again({ notCut: true }) },
    ]);
  }

  /** The next piece comes onto the bench first; the reading is logged there. */
  function goOn(next: EntryCell, text: string, atMs: number): void {
    waiting.current = {
      isReady: ({ piece, feature }) => piece.id === next.pieceId && feature.id === next.featureId,
      act: () => judge(text, atMs),
    };
    latest.current.where.goTo(next);
  }

  function log(text: string, meaning: LengthMeaning, place: Place, now: EntryCommit): void {
    const bench = latest.current;
    const gauge = bench.gauge!;
    const { piece, feature, chosen } = bench;
    const valuePm = meaning.sizePm;
    const resolutionPm = meaning.resolutionPm ?? gauge.resolutionPm;
    const slip = slipAs(text, meaning, gauge);
    before.current = now;
    const entry = bench.fresh.reading({
      text,
      unit: meaning.unit,
      valuePm,
      resolutionPm,
      pieceId: piece.id,
      featureId: feature.id,
      gaugeId: gauge.id,
      station: place.station,
      direction: place.direction,
      personId: chosen.personId,
      temperatureMilliC: null,
      heldAs: slip?.kind ?? null,
    });
    bench.pick(null);
    if (gauge.sendsUnit === 'button') bench.setUnit(meaning.unit);
    line.notify(null);
    const { view, cell: known, partnerStandardPm } = bench;
    rememberRead(view.sheet.job.id, { pieceId: piece.id, featureId: feature.id, id: entry.id });
    const cell = entryCell(known, [entry], feature.kind, view.cells, partnerStandardPm);
    const outcome = bench.hides(cell.readings) ? 'kept' : outcomeOf(cell.verdict?.state ?? 'none');
    giveFeedback(slip === null ? outcome : 'unsure');
    sayAloud(spokenLength(valuePm, resolutionPm, meaning.unit));
  }

  /** Enter on an empty line: nothing, or on to the next piece when this one is done. */
  function goNext(): void {
    line.notify(null);
    const { nextCell, cell, feature, held, where } = latest.current;
    if (held !== null || nextCell === null) return;
    if (entryNext(feature, cell.readings).next === null) where.goTo(nextCell);
  }

  return { judge, goNext };
}

/** "P6", or "P6 length" where the feature is another one. */
export function nameOf(bench: Bench, cell: EntryCell): string {
  const { pieces, features } = bench.view.sheet;
  const mark = pieces.find(({ id }) => id === cell.pieceId)?.mark ?? '';
  const feature = features.find(({ id }) => id === cell.featureId);
  return cell.featureId === bench.feature.id || feature === undefined
    ? mark
    : `${mark} ${feature.name.toLowerCase()}`;
}
