'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { entryStep } from '@/lib/rules/entry-step';
import type { Place } from '@/lib/rules/entry-plan';
import { isSamePlace } from '@/lib/rules/entry-plan';
import type { KeptFacts } from '@/lib/text/bench-head';
import { useJob } from '../job/job-provider';
import { jobIndex } from '../primitives/sheet-head';
import { BenchHead } from './bench-head';
import { BenchMap } from './bench-map';
import { BenchNotes } from './bench-notes';
import { BenchStrip } from './bench-strip';
import styles from './bench.module.css';
import { ChooseDialog } from './choose-dialog';
import { EntryLine } from './entry-line';
import { GaugeList } from './gauge-list';
import { KeysDialog } from './keys-dialog';
import { Keypad } from './keypad';
import { ReadingBlock } from './reading-block';
import { ReadingDialog } from './reading-dialog';
import { heldQuestion, SlipPanel } from './slip-panel';
import { SoFar } from './so-far';
import { TargetNote } from './target-note';
import { TrayDialog } from './tray-dialog';
import type { Bench } from './use-bench';
import { useCut } from './use-cut';
import { useDeviceWord } from './use-device-word';
import { useEntry } from './use-entry';
import { plainCorrection } from './use-fresh';
import { useMedia } from './use-media';
import { useMemory } from './use-memory';
import { usePerson } from './use-person';
import { useWakeLock } from './use-wake-lock';

/** No room for the large strip: a small phone, or one lying down. */
const flat =
  '(max-width: 767px) and (max-height: 759px), (min-width: 600px) and (max-height: 559px)';

/** What lies over the bench. */
type Over =
  | { kind: 'choose' }
  | { kind: 'keys' }
  | { kind: 'tray' }
  | { kind: 'reading'; place: Place; mistypedId?: string };

/** The bench with a piece on it. */
export function BenchOpen({ bench: known }: { bench: Bench }) {
  const { outbox } = useJob();
  const person = usePerson();
  const bench = { ...known, chosen: { ...known.chosen, personId: person.id } };
  const { piece, feature, cell, last, held, fresh, where, gauge } = bench;
  const [over, setOver] = useState<Over | null>(null);
  const [keys] = useMemory('keys');
  const [soft] = useMemory('soft-keyboard');
  const isLow = useMedia('(max-width: 767px) and (max-height: 811px)');
  const isFlat = useMedia(flat);
  const cut = useCut(bench);
  useWakeLock();
  useTitle(`${piece.mark} ${feature.name.toLowerCase()}`);
  useAltSheets(bench.view.sheet.job.id);

  const correct = (kind: 'void' | 'restore' | 'count', readingId: string, reason = '') =>
    fresh.correction({ ...plainCorrection, kind, readingId, reason, personId: person.id });
  const voidLast = () => {
    if (last !== null) correct(last.state === 'struck' ? 'restore' : 'void', last.id);
  };
  const goBeside = (by: 1 | -1) => {
    const beside = where.beside(by);
    if (beside !== null) where.goTo(beside);
  };
  const isToMake = (bench.partner?.target ?? null) !== null || cell.verdict?.state === 'to cut';
  const canCut = isToMake && cell.readings.length > 0 && held === null;
  const entry = useEntry(
    bench,
    {
      void: voidLast,
      move(along, by) {
        const place = entryStep(feature, bench.next ?? last, { along, by });
        if (place !== null) bench.pick(place);
        else if (along === 'plan') goBeside(by);
      },
      cell: goBeside,
      springPass() {
        if (canCut) void cut.note(true);
      },
      listKeys: () => setOver({ kind: 'keys' }),
      closeLists: () => setOver(null),
      noteCut: cut.note,
    },
    keys !== 'off',
  );
  const close = () => {
    setOver(null);
    entry.input.current?.focus({ preventScroll: true });
  };
  const pick = (station: string, direction: string) => {
    const place = { station, direction };
    if (cell.readings.some((reading) => isSamePlace(reading, place))) {
      setOver({ kind: 'reading', place });
    } else {
      bench.pick(place);
      entry.input.current?.focus({ preventScroll: true });
    }
  };
  const found = held === null ? null : bench.slipOfHeld(held);
  const question = held === null || found === null ? null : heldQuestion(bench, held, found);
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
      <BenchHead
        bench={bench}
        kept={useKeptFacts(bench)}
        person={person.name}
        onChoose={() => setOver({ kind: 'choose' })}
      />
      <div className={styles.told}>
        <BenchNotes
          fresh={fresh}
          shown={bench.chosen}
          trouble={outbox.trouble}
          clockOff={outbox.clockOff}
          waiting={outbox.tray.length}
          onTray={() => setOver({ kind: 'tray' })}
        />
        <ReadingBlock
          bench={bench}
          slip={last !== null && last === held ? question : null}
          onVoid={voidLast}
          onCut={canCut ? () => void cut.note(false) : null}
          cutBusy={cut.busy}
        >
          <SoFar bench={bench} typed={entry.typed} />
        </ReadingBlock>
        {isFlat && (isAsking || isToMake) ? null : (
          <div className={styles.strip}>
            <BenchStrip bench={bench} small={isFlat} />
          </div>
        )}
        {last === null && cell.earlier.length === 0 ? null : (
          <TargetNote bench={bench} trouble={cut.trouble} />
        )}
      </div>
      <div className={styles.map}>
        <BenchMap bench={bench} onPick={pick} low={isLow} />
      </div>
      <div className={styles.desk}>
        <EntryLine
          bench={bench}
          entry={entry}
          softKeyboard={soft === 'on'}
          tucked={question !== null}
          onChooseGauge={() => setOver({ kind: 'choose' })}
        />
        {isAsking ? (
          <SlipPanel
            key={held!.id}
            question={question}
            onAgain={() => {
              correct('void', held!.id, 'measured again');
              bench.pick({ station: held!.station, direction: held!.direction });
              entry.input.current?.focus({ preventScroll: true });
            }}
            onRight={() => correct('count', held!.id)}
            onSlip={() => correct('void', held!.id, 'a slip')}
            onMistyped={() => setOver({ kind: 'reading', place: held!, mistypedId: held!.id })}
          />
        ) : gauge === null ? (
          <div className={styles.gauges}>
            <GaugeList
              bench={bench}
              onChosen={() => entry.input.current?.focus({ preventScroll: true })}
            />
          </div>
        ) : (
          <div className={styles.keypad}>
            <Keypad decimal={bench.chosen.decimal} onKey={entry.press} low={isLow} fill />
            <p className={styles.hint}>
              A plugged-in gauge types here too. Enter logs, V voids the last, ? lists the keys.
            </p>
          </div>
        )}
      </div>
      {over?.kind === 'choose' ? (
        <ChooseDialog
          bench={bench}
          person={person}
          onClose={close}
          onListKeys={() => setOver({ kind: 'keys' })}
        />
      ) : null}
      {over?.kind === 'keys' ? <KeysDialog onClose={close} /> : null}
      {over?.kind === 'tray' ? <TrayDialog tray={outbox.tray} onClose={close} /> : null}
      {over?.kind === 'reading' ? (
        <ReadingDialog
          bench={bench}
          place={over.place}
          {...(over.mistypedId === undefined ? {} : { mistypedId: over.mistypedId })}
          personId={person.id}
          onClose={close}
        />
      ) : null}
    </main>
  );
}

/** How far the last reading has come: the disk of this device, then the book. */
function useKeptFacts({ fresh, last, plan }: Bench): KeptFacts {
  const { pending, outbox } = useJob();
  const device = useDeviceWord();
  const isFresh = fresh.list.length > 0;
  const reached = fresh.list.some(({ failure }) => failure !== null)
    ? ('not kept' as const)
    : isFresh
      ? ('being kept' as const)
      : last === null
        ? null
        : pending.has(last.id)
          ? ('on this device' as const)
          : ('in the book' as const);
  return { reached, at: last?.deviceTime ?? null, unsent: outbox.unsent, held: plan.held, device };
}

function useTitle(title: string): void {
  useEffect(() => {
    const wanted = `${title} · Fitwright`;
    const set = () => {
      if (document.title !== wanted) document.title = wanted;
    };
    set();
    // The title of the page itself may arrive after this one.
    const observer = new MutationObserver(set);
    observer.observe(document.head, { childList: true, subtree: true, characterData: true });
    return () => observer.disconnect();
  }, [title]);
}

/** Alt and a digit go to the sheet of that number; a digit alone belongs to the entry. */
function useAltSheets(jobId: string): void {
  const router = useRouter();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!event.altKey || event.ctrlKey || event.metaKey) return;
      const digit = /^(?:Digit|Numpad)(\d)$/.exec(event.code)?.[1];
      const sheet = jobIndex(jobId).find(({ number }) => String(number) === digit);
      if (sheet === undefined) return;
      event.preventDefault();
      router.push(sheet.href);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [jobId, router]);
}
