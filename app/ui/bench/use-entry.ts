'use client';

import {
  useEffect,
  useEffectEvent,
  useLayoutEffect,
  useRef,
  useState,
  type RefObject,
} from 'react';
import { flushSync } from 'react-dom';
import { isActRepeat, type Act } from '@/lib/rules/act-repeat';
import { isAtPace, isGaugeTab, noBurst, withCharacter } from '@/lib/rules/entry-burst';
import { endsAfterMs, endsWithComma, halfOfDouble, isSecondEnd } from '@/lib/rules/entry-end';
import type { KeyRole } from '@/lib/rules/entry-key';
import type { PedalAct } from '@/lib/rules/entry-pedal';
import { dueOf, type Unplaced } from '@/lib/rules/entry-unplaced';
import { keypadText } from '@/lib/rules/keypad-text';
import { unkeptWords } from '@/lib/text/bench-entry';
import type { Notice } from './entry-notice';
import type { KeypadKey } from './keypad';
import type { Bench } from './use-bench';
import { useCommit } from './use-commit';
import { pressed, useKeys } from './use-keys';
import { useUnplaced } from './use-unplaced';

/** A figure that answers a question stands alone for this long; what comes faster is a gauge typing. */
const aloneMs = 150;

/** A timer this late was held up by a busy page, and keys may be waiting behind it. */
const lateMs = 50;

/** What a key does that is not typing; shown and done by the Bench around the entry. */
export type BenchActs = {
  /** Takes the last entry back, or puts it back; a sentence where it is on another piece. */
  void: () => string | null;
  /** Measures again: what is asked about, else at the place of the last reading. */
  again: () => void;
  move: (along: 'stations' | 'directions' | 'plan', by: 1 | -1) => void;
  cell: (by: 1 | -1) => void;
  along: (what: 'features' | 'pieces', by: 1 | -1) => void;
  springPass: () => void;
  /** Shows what to cut next. */
  cut: () => void;
  listKeys: () => void;
  /** Shows what this device does. */
  thisDevice: () => void;
  /** Closes what lies over the bench, so that a reading is seen to arrive. */
  closeLists: () => void;
  /** Notes that metal came off; false when the notebook could not. */
  noteCut: (spring: boolean) => Promise<boolean>;
};

export type EntryState = {
  input: RefObject<HTMLInputElement | null>;
  /** A copy of what stands in the line, for echo and layout; the line itself is the input. */
  typed: string;
  notice: Notice | null;
  dismiss: () => void;
  /** The input's own event: something was typed, pasted or rubbed out there, or put in as one piece. */
  changed: (event: InputEvent) => void;
  /** Before the input changes: soft keyboards have no key names, only what they are about to insert. */
  beforeInput: (event: InputEvent) => void;
  log: () => void;
  press: (key: KeypadKey) => void;
  pedal: (act: PedalAct) => void;
  /** What was typed and is no reading yet. */
  unplaced: {
    list: readonly Unplaced[];
    /** Judges one as if it were typed now. */
    place: (one: Unplaced) => void;
    throwAway: () => void;
  };
  /** A reading of the chosen gauge that came by its port: it goes the way of a typed one. */
  arrive: (text: string) => void;
};

/**
 * The entry line: one uncontrolled input, read and cleared in the same event, that receives what is typed
 * anywhere on the page.
 */
export function useEntry(bench: Bench, acts: BenchActs, shortcuts: boolean): EntryState {
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState('');
  const [notice, setNotice] = useState<Notice | null>(null);
  const before = useRef('');
  const burst = useRef(noBurst);
  /** A text was put back: the next figure begins a new one, a correction mends it. */
  const replaces = useRef(false);
  /** Texts that were asked about, not answered and typed over since something was kept. */
  const unkept = useRef<string[]>([]);
  const lone = useRef<{ figure: string; timer: number } | null>(null);
  /** What stands in the line becomes a reading unless another key comes: a gauge ends it with nothing. */
  const ending = useRef<number | null>(null);
  /** When a gauge's message was ended last; the second half of a pair of ends is passed over. */
  const lastEndMs = useRef<number | null>(null);
  /** What was logged last: a key that bounces goes on to nothing, and the reading is seen. */
  const lastLog = useRef<Act | null>(null);

  const set = (text: string) => {
    const line = input.current;
    if (line === null) return;
    line.value = text;
    if (text !== '') line.setSelectionRange(text.length, text.length);
    before.current = text;
    setTyped(text);
  };
  const unplaced = useUnplaced(bench.view.sheet.job.id);
  const onBench = { pieceId: bench.piece.id, featureId: bench.feature.id };
  const told = useRef<Notice | null>(null);
  const line = {
    notify(next: Notice | null) {
      told.current = next;
      // What was not kept is said until something is.
      const says = unkeptWords(unkept.current);
      if (next?.kind === 'question' && says !== '') {
        setNotice({ ...next, title: `${says} ${next.title}` });
        return;
      }
      if (next === null) unkept.current = [];
      setNotice(next);
    },
    clear() {
      replaces.current = false;
      set('');
    },
    putBack(text: string) {
      set(text);
      replaces.current = true;
    },
    wait(text: string) {
      unplaced.add({ ...onBench, text, lacks: 'gauge' });
    },
  };
  const { judge, goNext } = useCommit(bench, line, acts.noteCut);

  // The gauge has been named: what waited for it is logged, one after the other, as if it came now.
  const due =
    bench.gauge === null || notice?.kind === 'question' ? null : dueOf(unplaced.list, onBench);
  const placeDue = useEffectEvent((one: Unplaced) => {
    unplaced.take(one.id);
    judge(one.text, nowMs(), { kept: true });
  });
  useLayoutEffect(() => {
    if (due !== null) placeDue(due);
  }, [due]);

  /** What stands in the line is not ended by itself. */
  const stay = () => {
    window.clearTimeout(ending.current ?? undefined);
    ending.current = null;
  };

  const log = (atMs: number) => {
    const standing = input.current?.value ?? '';
    if (lone.current !== null || notice?.kind === 'question') return;
    stay();
    const isSent = isAtPace(burst.current, 201);
    const text = bench.gauge?.sendsEnd === 'space' ? standing.trim() : standing;
    burst.current = noBurst;
    replaces.current = false;
    set('');
    if (text.trim() === '') {
      if (!isActRepeat(lastLog.current, { what: 'log', atMs })) goNext();
      return;
    }
    lastLog.current = { what: 'log', atMs };
    lastEndMs.current = isSent ? atMs : null;
    const half = halfOfDouble(text, bench.gauge);
    judge(half ?? text, atMs);
    if (half !== null) judge(half, atMs);
  };
  const latestLog = useRef(log);
  useLayoutEffect(() => {
    latestLog.current = log;
  });
  useEffect(() => () => window.clearTimeout(ending.current ?? undefined), []);

  const endAfter = (pauseMs: number) => {
    const { lastAtMs } = burst.current;
    const armedMs = nowMs();
    const end = () => {
      ending.current = null;
      // The next message is judged by the bench as it is after this one.
      flushSync(() => latestLog.current(lastAtMs + pauseMs));
    };
    ending.current = window.setTimeout(() => {
      if (nowMs() - armedMs < pauseMs + lateMs) end();
      else ending.current = window.setTimeout(end, lateMs);
    }, pauseMs);
  };
  /** The next character begins another message: the pause is over, or a space has ended the one before. */
  const isNextMessage = (character: string, atMs: number): boolean => {
    if (ending.current === null) return false;
    const text = input.current?.value ?? '';
    if (bench.gauge?.sendsEnd === 'space') return /[\d.,+\-\u2212]/.test(character);
    const pauseMs = endsAfterMs(text, bench.gauge, burst.current);
    return pauseMs !== null && atMs - burst.current.lastAtMs >= pauseMs;
  };

  const insert = (characters: string, atMs: number) => {
    const at = input.current;
    if (at === null) return;
    const { selectionStart, selectionEnd, value } = at;
    const from = selectionStart ?? value.length;
    // At its end, where nearly all is typed, a new value spares the browser a layout of its own for each key.
    if (from === value.length) at.value = value + characters;
    else at.setRangeText(characters, from, selectionEnd ?? value.length, 'end');
    changed(atMs);
  };
  const changed = (atMs: number, inserted = '') => {
    stay();
    const text = input.current?.value ?? '';
    if (text.length <= before.current.length) {
      burst.current = noBurst;
      // What was put back is being mended.
      replaces.current = false;
    } else {
      if (before.current === '') burst.current = noBurst;
      burst.current = withCharacter(burst.current, atMs);
      // No hand puts in several characters at once; what is pasted is not counted.
      for (let n = 1; n < inserted.length; n += 1) {
        burst.current = withCharacter(burst.current, atMs);
      }
    }
    before.current = text;
    if (notice?.kind === 'error' || notice?.kind === 'repeat') setNotice(null);
    if (text.endsWith(',') && endsWithComma(text.slice(0, -1), bench.gauge)) {
      set(text.slice(0, -1));
      log(atMs);
      return;
    }
    setTyped(text);
    const pauseMs = endsAfterMs(text, bench.gauge, burst.current);
    if (pauseMs !== null) endAfter(pauseMs);
  };

  /** What has to happen before a character goes into the line. */
  const makeRoom = () => {
    acts.closeLists();
    const figure = dropLone();
    if (notice?.kind === 'question') {
      const open = (input.current?.value ?? '').trim();
      const { otherwise } = notice;
      otherwise?.act();
      set(figure ?? '');
      replaces.current = false;
      if (otherwise === undefined) {
        unkept.current.push(open);
        unplaced.add({ ...onBench, text: open, lacks: 'answer' });
      }
      setNotice({ kind: 'said', says: otherwise?.says ?? unkeptWords(unkept.current) });
    } else if (replaces.current) {
      replaces.current = false;
      set('');
    }
  };
  const dropLone = () => {
    const waiting = lone.current;
    if (waiting === null) return null;
    window.clearTimeout(waiting.timer);
    lone.current = null;
    return waiting.figure;
  };
  const rubOut = () => {
    const at = input.current;
    if (at === null) return;
    dropLone();
    stay();
    if (notice?.kind === 'question') setNotice(null);
    replaces.current = false;
    const { selectionStart: from, selectionEnd: to, value } = at;
    const isChosen = from !== null && to !== null && from < to;
    set(isChosen ? value.slice(0, from) + value.slice(to) : keypadText(value, 'rub out'));
    burst.current = noBurst;
  };
  const answer = (figure: string, index: number) => {
    if (notice?.kind !== 'question') return;
    if (lone.current !== null) {
      makeRoom();
      insert(figure, nowMs());
      return;
    }
    const { act } = notice.answers[index]!;
    lone.current = {
      figure,
      timer: window.setTimeout(() => {
        lone.current = null;
        act();
      }, aloneMs),
    };
  };

  /** A comma or a space on an empty line, right behind an end: the gauge sends both. */
  const isSecondHalf = (character: string, atMs: number) =>
    (character === ',' || character === ' ') &&
    input.current?.value === '' &&
    isSecondEnd(lastEndMs.current, atMs);

  /** True where the event has been dealt with and must do nothing more by itself. */
  const play = (role: KeyRole, target: EventTarget | null, atMs: number): boolean => {
    const isHere = target === input.current;
    const isPressed = !isHere && target instanceof Element && target.closest(pressed) !== null;
    const hasList = document.querySelector('dialog[open]') !== null;
    switch (role.kind) {
      case 'type':
        if (isPressed && role.character === ' ') return false;
        if (isNextMessage(role.character, atMs)) log(atMs);
        if (isSecondHalf(role.character, atMs)) return true;
        makeRoom();
        // Put in here and now: between a key and its character the browser lets the focus go elsewhere (a
        // question that opens, a list that closes), and the character with it.
        if (!isHere) input.current?.focus();
        insert(role.character, atMs);
        return true;
      case 'overwrite':
        if (isHere) return false;
        if (hasList) return true;
        input.current?.focus();
        input.current?.select();
        return true;
      case 'log':
        if (isPressed || hasList) return false;
        log(atMs);
        return true;
      case 'rub out':
        if (isHere && notice?.kind !== 'question' && !replaces.current) return false;
        if (hasList) return false;
        rubOut();
        return true;
      case 'tab':
        if (!isHere) return false;
        if (input.current?.value === '' && isSecondEnd(lastEndMs.current, atMs)) return true;
        if (!isGaugeTab(burst.current, atMs)) return false;
        log(atMs);
        return true;
      case 'escape':
        if (hasList || notice === null) return false;
        dropLone();
        setNotice(null);
        return true;
      case 'answer':
        answer(String(role.index + 1), role.index);
        return true;
      case 'move':
        if (hasList || (isPressed && role.along !== 'plan')) return false;
        acts.move(role.along, role.by);
        return true;
      case 'cell':
        if (hasList) return false;
        acts.cell(role.by);
        return true;
      case 'along':
        if (hasList) return false;
        acts.along(role.what, role.by);
        return true;
      case 'void':
        if (hasList) return false;
        takeBack();
        return true;
      case 'last digits':
        if (hasList) return false;
        bench.setLastDigits(!bench.lastDigits && bench.blind === null);
        return true;
      case 'this device':
        acts.thisDevice();
        return true;
      case 'spring pass':
        if (hasList) return false;
        acts.springPass();
        return true;
      case 'cut':
        if (hasList) return false;
        acts.cut();
        return true;
      case 'list keys':
        acts.listKeys();
        return true;
    }
  };
  const state = () => ({
    isEmpty: (input.current?.value ?? '') === '',
    answers: notice?.kind === 'question' ? notice.answers.length : 0,
    shortcuts,
    prefix: bench.gauge?.sendsPrefix ?? null,
  });

  const { beforeInput, pressedAtMs } = useKeys(input, state, play);

  function takeBack(): void {
    const says = acts.void();
    if (says !== null) setNotice({ kind: 'said', says });
  }

  const pedal = (act: PedalAct) => {
    const field = document.activeElement;
    if (field instanceof HTMLInputElement && field !== input.current && field.form !== null) {
      // A form lies over the bench: the pedal that logs says that it is right.
      if (act === 'commit') field.form.requestSubmit();
      return;
    }
    acts.closeLists();
    const isEmpty = (input.current?.value ?? '') === '';
    if (act === 'next') acts.move('plan', 1);
    else if (act === 'commit') {
      if (isEmpty) acts.again();
      else log(nowMs());
    } else if (isEmpty) takeBack();
    else {
      stay();
      setNotice(null);
      line.clear();
    }
  };

  const press = (key: KeypadKey) => {
    switch (key) {
      case 'unit':
        bench.setUnit(bench.unit === 'mm' ? 'in' : 'mm');
        return;
      case 'last digits':
        bench.setLastDigits(!bench.lastDigits);
        return;
      case 'next':
        acts.cell(1);
        return;
      case 'more':
        acts.thisDevice();
        return;
      case 'log':
        log(nowMs());
        return;
      case 'rub out':
        rubOut();
        return;
      case 'sign':
        makeRoom();
        set(keypadText(input.current?.value ?? '', 'sign'));
        return;
      default: {
        const answers = notice?.kind === 'question' ? notice.answers : [];
        const answered = answers[Number(key) - 1];
        if (answered !== undefined) return answered.act();
        makeRoom();
        insert(key, nowMs());
        // A thumb ends with Log, however quick it is.
        stay();
        burst.current = { ...burst.current, longestGapMs: Infinity };
      }
    }
  };

  const arrive = (text: string) => {
    // What was open is settled, and on the bench, before this one is judged.
    flushSync(makeRoom);
    const dropped = unkeptWords(unkept.current);
    const { gauge, unit } = bench;
    const rule = gauge?.sendsUnit;
    judge(text, nowMs(), {
      unit: rule === 'mm' || rule === 'in' ? rule : (gauge?.unit ?? unit),
    });
    // It was kept before anybody could see what was dropped for it.
    if (dropped !== '' && told.current === null) setNotice({ kind: 'said', says: dropped });
  };

  const place = (one: Unplaced) => {
    makeRoom();
    unplaced.take(one.id);
    input.current?.focus({ preventScroll: true });
    judge(one.text, nowMs(), { kept: true });
  };

  return {
    unplaced: { list: unplaced.list, place, throwAway: () => unplaced.take('all') },
    input,
    typed,
    notice,
    dismiss: () => setNotice(null),
    changed: (event) => {
      changed(pressedAtMs(event), event.inputType === 'insertText' ? (event.data ?? '') : '');
    },
    beforeInput,
    log: () => log(nowMs()),
    press,
    pedal,
    arrive,
  };
}

function nowMs(): number {
  return performance.now();
}
