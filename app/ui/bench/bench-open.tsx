'use client';

import { useDeferredValue, useMemo, useState } from 'react';
import { readBeforeCut } from '@/lib/rules/read-before-cut';
import { useJob } from '../job/job-provider';
import { BlindBlock } from './blind-block';
import { BenchDesk } from './bench-desk';
import { BenchHead } from './bench-head';
import { BenchMap } from './bench-map';
import { BenchNotes } from './bench-notes';
import type { Over } from './bench-over';
import {
  BenchOverLater,
  EventRowLater,
  PortLineLater,
  useBenchSoon,
  ZoneNoteLater,
} from './bench-later';
import { BenchStrip } from './bench-strip';
import styles from './bench.module.css';
import { ReadingBlock } from './reading-block';
import { heldQuestion } from './slip-panel';
import { SoFar } from './so-far';
import { TargetNote } from './target-note';
import { saveUnkept } from './save-unkept';
import { UnplacedNote } from './unplaced-note';
import { useActs } from './use-acts';
import { useAltSheets } from './use-alt-sheets';
import type { Bench } from './use-bench';
import { useCut } from './use-cut';
import { useEntry } from './use-entry';
import type { Fresh } from './use-fresh';
import { useHasSerial } from './use-has-serial';
import { useKeptFacts } from './use-kept-facts';
import { useMedia } from './use-media';
import { useMemory } from './use-memory';
import { usePedals } from './use-pedals';
import { usePerson } from './use-person';
import { useSteady } from './use-steady';
import { useTitle } from './use-title';
import { useWakeLock } from './use-wake-lock';
import { WhereWas } from './where-was';

/** Keys and map closer together. */
const low = '(max-width: 767px) and (max-height: 811px)';
/** No room for the large strip: a small phone, or one lying down. */
const flat =
  '(max-width: 767px) and (max-height: 759px), (min-width: 600px) and (max-height: 559px)';

/** One column: what happened to the machine is noted below the keys. */
const narrow = '(max-width: 599px), (max-width: 767px) and (min-height: 560px)';

/** The bench with a piece on it. */
export function BenchOpen({ bench }: { bench: Bench }) {
  const { outbox } = useJob();
  const person = usePerson();
  // The reading, its verdict, the size and the strip are drawn in the frame of the key; the rest a moment later.
  const later = useDeferredValue(bench);
  const { piece, feature, last, held, blind } = bench;
  const [over, setOver] = useState<Over | null>(null);
  const [keys] = useMemory('keys');
  const isLow = useMedia(low);
  const isFlat = useMedia(flat);
  const isNarrow = useMedia(narrow);
  const cut = useCut(bench);
  const { acts, correct, voidLast, pick, isToMake, canCut } = useActs(bench, cut, setOver);
  const entry = useEntry(bench, acts, keys !== 'off');
  usePedals(entry.pedal);
  const hasSerial = useHasSerial();
  useWakeLock();
  useBenchSoon();
  useTitle(`${piece.mark} ${feature.name.toLowerCase()}`);
  useAltSheets(bench.view.sheet.job.id);
  const kept = useKeptFacts(later);

  const toEntry = () => entry.input.current?.focus({ preventScroll: true });
  const close = () => {
    // While it stands open nothing behind it can have the focus.
    document.querySelector<HTMLDialogElement>('dialog[open]')?.close();
    setOver(null);
    toEntry();
  };
  const beforeCut = useMemo(
    () => readBeforeCut(later.view.sheet, later.cell),
    [later.view.sheet, later.cell],
  );
  const question = useMemo(() => {
    const found = held === null ? null : bench.slipOfHeld(held);
    return held === null || found === null ? null : heldQuestion(bench, held, found);
  }, [bench, held]);
  const choose = useSteady(() => setOver({ kind: 'choose' }));
  const showTray = useSteady(() => setOver({ kind: 'tray' }));
  const saveNotKept = useSteady((failed: readonly Fresh[]) => saveUnkept(bench.view, failed));
  const pickPlace = useSteady((station: string, direction: string) => {
    if (pick(station, direction)) return;
    toEntry();
    // On a phone the map may stand below the keys: what was scrolled past comes back.
    if (isNarrow || isFlat) window.scrollTo({ top: 0 });
  });
  const run = later.view.runs.find((one) => one.features.some(({ id }) => id === feature.id));
  const events =
    run === undefined ? null : (
      <div className={styles.events}>
        <EventRowLater run={run} bench onDone={toEntry} />
      </div>
    );
  const isAsking = question !== null && entry.typed === '' && entry.notice === null;
  return (
    <main
      className={styles.bench}
      data-asking={isAsking || undefined}
      data-cut={(isToMake && last !== null) || undefined}
    >
      <h1 className="unseen">
        {piece.mark} {feature.name.toLowerCase()}, bench
      </h1>
      <BenchHead bench={later} kept={kept} person={person.name} onChoose={choose} />
      <div className={styles.told}>
        <BenchNotes
          fresh={later.fresh}
          blind={blind !== null}
          shown={later.chosen}
          trouble={outbox.trouble}
          clockOff={outbox.clockOff}
          beforeCut={beforeCut}
          waiting={outbox.tray.length}
          onTray={showTray}
          onSave={saveNotKept}
        />
        <UnplacedNote unplaced={entry.unplaced} blind={blind !== null} />
        {hasSerial && (bench.gauge?.serialBaud ?? null) !== null ? (
          <PortLineLater key={bench.gauge!.id} gauge={bench.gauge!} onReading={entry.arrive} />
        ) : null}
        {blind === null ? (
          <ReadingBlock
            bench={bench}
            slip={last !== null && last === held ? question : null}
            onVoid={voidLast}
            onCut={canCut ? () => void cut.note(false) : null}
            cutBusy={cut.busy}
          >
            <SoFar bench={bench} typed={entry.typed} />
          </ReadingBlock>
        ) : (
          <BlindBlock
            bench={bench}
            blind={blind}
            onVoid={voidLast}
            onCut={canCut ? () => void cut.note(false) : null}
            cutBusy={cut.busy}
          />
        )}
        {blind !== null || (isFlat && (isAsking || isToMake)) ? null : (
          <div className={styles.strip}>
            <BenchStrip bench={bench} small={isFlat} />
          </div>
        )}
        {blind !== null || (later.last === null && later.cell.earlier.length === 0) ? null : (
          <TargetNote bench={later} trouble={cut.trouble} />
        )}
        {blind === null && run !== undefined && <ZoneNoteLater bench={later} onDone={toEntry} />}
        {isNarrow ? null : events}
      </div>
      <div className={styles.map}>
        <WhereWas bench={later} typed={entry.typed} />
        <BenchMap bench={later} onPick={pickPlace} low={isLow} />
      </div>
      <BenchDesk
        bench={later}
        entry={entry}
        question={question}
        isAsking={isAsking}
        low={isLow}
        onChooseGauge={choose}
        onCorrect={correct}
        onMistyped={() => {
          if (held !== null) setOver({ kind: 'reading', place: held, mistypedId: held.id });
        }}
      />
      {isNarrow && !isAsking ? events : null}
      {over === null ? null : (
        <BenchOverLater
          over={over}
          bench={bench}
          person={person}
          onClose={close}
          onListKeys={() => setOver({ kind: 'keys' })}
          onDevice={() => setOver({ kind: 'device' })}
          onTray={showTray}
        />
      )}
    </main>
  );
}
