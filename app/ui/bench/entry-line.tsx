'use client';

import { useEffect, useEffectEvent } from 'react';
import { entryReading } from '@/lib/rules/entry-reading';
import { takenAllWords } from '@/lib/text/bench-ask';
import { echoWords, whichWords } from '@/lib/text/bench-entry';
import { placeWords } from '@/lib/text/bench-place';
import { shownLength } from '@/lib/text/shown-size';
import { targetFigures } from '@/lib/text/target-figures';
import styles from './entry-line.module.css';
import { EntryNotice } from './entry-notice-view';
import type { Bench } from './use-bench';
import { nameOf } from './use-commit';
import type { EntryState } from './use-entry';

type Props = {
  bench: Bench;
  entry: EntryState;
  /** The phone's own keyboard is asked for; else only the keys on the screen. */
  softKeyboard: boolean;
  /** Out of sight while a question about a reading is open and nothing is being typed. */
  tucked: boolean;
  onChooseGauge: () => void;
};

/** The one line everything typed goes to, with where it will go and how it will be read. */
export function EntryLine({ bench, entry, softKeyboard, tucked, onChooseGauge }: Props) {
  const { next, feature, gauge, unit, nextCell, plan } = bench;
  const { input, typed, notice } = entry;
  const beforeInput = useEffectEvent((event: InputEvent) => entry.beforeInput(event));
  useEffect(() => {
    const line = input.current;
    const listen = (event: InputEvent) => beforeInput(event);
    line?.addEventListener('beforeinput', listen);
    return () => line?.removeEventListener('beforeinput', listen);
  }, [input]);
  useEffect(() => {
    // A keyboard has its place at once; on a touch screen a page may not take it by itself.
    if (document.activeElement === document.body) input.current?.focus({ preventScroll: true });
  }, [input]);

  const place = next === null ? takenAllWords(plan.of) : placeWords(next, feature);
  const isTucked = tucked && typed === '' && notice === null;
  const isRelative = /^\s*[+\-\u2212\u2013]/.test(typed);
  const inUnit = unit === 'mm' ? 'mm' : 'inch';
  return (
    <form
      className={`${styles.entry} ${isTucked ? styles.tucked : ''}`}
      onSubmit={(event) => {
        event.preventDefault();
        entry.log();
      }}
    >
      {notice === null ? null : <EntryNotice notice={notice} onDismiss={entry.dismiss} />}
      <div className={styles.line} data-asks={notice?.kind === 'question' || undefined}>
        <input
          ref={input}
          className={styles.input}
          type="text"
          name="reading"
          defaultValue=""
          aria-label={`Reading${place === '' ? '' : `, ${place}`}${gauge === null ? '' : `, ${gauge.name}, ${inUnit}`}`}
          placeholder={
            gauge === null
              ? 'Which gauge?'
              : bench.blind !== null
                ? ''
                : bench.lastDigits
                  ? 'last digits'
                  : targetHint(bench)
          }
          inputMode={softKeyboard ? 'text' : 'none'}
          enterKeyHint="done"
          autoComplete="off"
          autoCorrect="off"
          autoCapitalize="off"
          spellCheck={false}
          onInput={(event) => entry.changed(event.nativeEvent as InputEvent)}
        />
        <div className={styles.about}>
          <span className={styles.place}>{place === '' ? feature.name.toLowerCase() : place}</span>
          {typed === '' && next === null && nextCell !== null && notice === null ? (
            <button type="button" className={styles.go} onClick={() => bench.where.goTo(nextCell)}>
              on to {nameOf(bench, nextCell)}
            </button>
          ) : (
            <Echo bench={bench} typed={typed} />
          )}
          <button
            type="button"
            className={styles.gauge}
            onClick={onChooseGauge}
            aria-haspopup="dialog"
          >
            <span className="unseen">Gauge and unit: </span>
            {gauge === null ? (
              'no gauge'
            ) : (
              <span className={styles.gaugeName}>{isRelative ? '' : `${gauge.name}, `}</span>
            )}
            {gauge === null ? null : (
              <b>{isRelative ? `${inUnit}, from ${nominalWords(bench)}` : inUnit}</b>
            )}
          </button>
        </div>
      </div>
    </form>
  );
}

function Echo({ bench, typed }: { bench: Bench; typed: string }) {
  const { chosen, unit, feature, gauge } = bench;
  if (gauge === null || typed === '') return null;
  const setting = {
    gauge,
    decimal: chosen.decimal,
    unit,
    nominalPm: feature.nominalPm,
    kind: feature.kind,
  };
  const read = entryReading(typed, setting, bench.lastDigits ? bench.lastFacts : null);
  if (read.kind === 'question' && read.code === 'last-digits') {
    return <output className={styles.echo}>{whichWords(read.meanings, chosen)}</output>;
  }
  if (read.kind !== 'length') return null;
  return <output className={styles.echo}>{echoWords(typed, read.meaning, chosen)}</output>;
}

/** What a departure is from. */
function nominalWords({ feature, chosen, resolutionPm, blind }: Bench): string {
  if (blind !== null) return 'the nominal';
  return shownLength(feature.nominalPm, resolutionPm, chosen);
}

/** What the piece is to be made to, faint in the empty line. */
function targetHint({ partner, chosen, resolutionPm }: Bench): string {
  const target = partner?.target ?? null;
  return target === null ? '' : `to ${targetFigures(target, resolutionPm, chosen).size}`;
}
