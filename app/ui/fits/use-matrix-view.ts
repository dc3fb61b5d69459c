'use client';

import {
  useCallback,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
  type RefObject,
} from 'react';
import { placeAfter, type Place } from './matrix-keys';
import { matrixWindow, type Stretch } from './matrix-window';

const touch = '(max-width: 767px), (pointer: coarse)';
export const columnPx = 88;
export const headPx = 92;
const block = { rows: 6, columns: 3 };

/** The pieces whose cell was chosen, null for a head: a piece that changes its place takes the choice along. */
type Chosen = { row: string | null; column: string | null };

/** Before anything is measured: about what fits on a desk. */
const first = { rows: { from: 0, to: 24 }, columns: { from: 0, to: 12 } };

/**
 * What of the table is drawn, and which of its cells has the focus. One cell at a time can be tabbed to; the
 * arrows move it, and the table scrolls with it.
 */
export function useMatrixView(
  box: RefObject<HTMLDivElement | null>,
  ids: { rows: readonly string[]; columns: readonly string[] },
) {
  const counts = useMemo(() => ({ rows: ids.rows.length, columns: ids.columns.length }), [ids]);
  const isTouch = useSyncExternalStore(
    onTouchChange,
    () => matchMedia(touch).matches,
    () => false,
  );
  const rowPx = isTouch ? 56 : 40;
  const [drawn, setDrawn] = useState<{ rows: Stretch; columns: Stretch }>(first);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const active = useMemo(() => (chosen === null ? null : placeIn(ids, chosen)), [chosen, ids]);
  const wanted = useRef<Place | null>(null);

  const look = useCallback(() => {
    const element = box.current;
    if (element === null) return;
    const rows = matrixWindow(
      { scrollPx: element.scrollTop, viewPx: element.clientHeight },
      { cellPx: rowPx, count: counts.rows, block: block.rows },
    );
    const columns = matrixWindow(
      { scrollPx: element.scrollLeft, viewPx: element.clientWidth },
      { cellPx: columnPx, count: counts.columns, block: block.columns },
    );
    setDrawn((old) =>
      same(old.rows, rows) && same(old.columns, columns) ? old : { rows, columns },
    );
  }, [box, counts.rows, counts.columns, rowPx]);

  useLayoutEffect(() => {
    // It looks once by itself as soon as it is there.
    const observer = new ResizeObserver(look);
    if (box.current !== null) observer.observe(box.current);
    return () => observer.disconnect();
  }, [box, look]);

  useLayoutEffect(() => {
    const place = wanted.current;
    if (place === null) return;
    wanted.current = null;
    cellAt(box.current, place)?.focus({ preventScroll: true });
  });

  const choose = useCallback(
    ({ row, column }: Place) =>
      setChosen({ row: ids.rows[row] ?? null, column: ids.columns[column] ?? null }),
    [ids],
  );
  const go = useCallback(
    (place: Place) => {
      if (box.current !== null) bringIntoView(box.current, place, rowPx);
      wanted.current = place;
      choose(place);
    },
    [box, rowPx, choose],
  );

  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (active === null || event.altKey || event.metaKey) return;
    const page = Math.max(1, Math.floor((box.current?.clientHeight ?? 0) / rowPx) - 2);
    const place = placeAfter(active, event.key, event.ctrlKey, { ...counts, page });
    if (place === null) return;
    event.preventDefault();
    go(place);
  };
  const onFocus = (event: React.FocusEvent): void => {
    const place = placeOf(event.target);
    if (place !== null && !(active !== null && samePlace(active, place))) choose(place);
  };
  return { rowPx, drawn, active, look, onKeyDown, onFocus };
}

/** The place of the table an element belongs to. */
export function placeOf(target: EventTarget): Place | null {
  const at = (target as Element).closest?.('[data-at]')?.getAttribute('data-at');
  if (at === null || at === undefined) return null;
  const [row, column] = at.split(' ').map(Number);
  return { row: row!, column: column! };
}

function placeIn(
  ids: { rows: readonly string[]; columns: readonly string[] },
  { row, column }: Chosen,
): Place | null {
  const place = {
    row: row === null ? -1 : ids.rows.indexOf(row),
    column: column === null ? -1 : ids.columns.indexOf(column),
  };
  const isGone = (row !== null && place.row < 0) || (column !== null && place.column < 0);
  return isGone ? null : place;
}

function cellAt(box: HTMLElement | null, { row, column }: Place): HTMLElement | null {
  return box?.querySelector<HTMLElement>(`[data-at="${row} ${column}"]`) ?? null;
}

/** Scrolls as little as it takes, clear of the heads that stay put. */
function bringIntoView(box: HTMLElement, { row, column }: Place, rowPx: number): void {
  if (row >= 0) {
    const top = row * rowPx;
    const most = box.clientHeight - 2 * rowPx;
    box.scrollTop = Math.min(top, Math.max(box.scrollTop, top - most));
  }
  if (column >= 0) {
    const left = column * columnPx;
    const most = box.clientWidth - headPx - columnPx;
    box.scrollLeft = Math.min(left, Math.max(box.scrollLeft, left - most));
  }
}

function onTouchChange(listener: () => void): () => void {
  const list = matchMedia(touch);
  list.addEventListener('change', listener);
  return () => list.removeEventListener('change', listener);
}

function same(a: Stretch, b: Stretch): boolean {
  return a.from === b.from && a.to === b.to;
}

function samePlace(a: Place, b: Place): boolean {
  return a.row === b.row && a.column === b.column;
}
