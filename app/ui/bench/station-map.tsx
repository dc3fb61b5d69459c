'use client';

import { useRef, type KeyboardEvent } from 'react';
import { placeWords } from '@/lib/text/bench-place';
import { stationWords } from '@/lib/text/station-words';
import { textWidth } from '../strip/text-width';
import { useWidth } from '../strip/use-width';
import { placeAfter, stationBanks, type Place, type StationCell } from './station-cells';
import styles from './station-map.module.css';

type Named = { station: string; direction: string };

type Props = {
  /** How the part is drawn: a bore in section, an outside in outline, a length as a plain bar. */
  kind: 'bore' | 'outside' | 'length';
  /** 1 to 12 names of stations along the part. */
  stations: readonly string[];
  /** 1 to 12 names of directions across it. */
  directions: readonly string[];
  /** `cells[direction][station]`. */
  cells: readonly (readonly StationCell[])[];
  next: Named | null;
  last: Named | null;
  onPick: (station: string, direction: string) => void;
  /** 50 high instead of 56: for a screen under 700 high. */
  low?: boolean;
  /** The width to draw before the box is measured, px. */
  firstWidth?: number;
};

const sidePx = 26;
/** From this width on the figures are those of a tablet. */
const wideFromPx = 560;
/** More directions than this are drawn in rows of a phone's height everywhere. */
const mostTallRows = 4;
/** What is higher than this leaves a phone no room for the keys under it. */
const mostLowRows = 2;

/** The part on its side: columns are stations, rows are directions; each place shows what was read and can be picked. */
export function StationMap(props: Props) {
  const { stations, directions, cells, next, last, kind, onPick, low = false } = props;
  const box = useRef<HTMLFieldSetElement>(null);
  const width = useWidth(box, props.firstWidth ?? 328);
  const isWide = width >= wideFromPx;
  const isTall = isWide && directions.length <= mostTallRows;
  const cellPx = cellLeastPx(cells, isWide ? 30 : 20);
  const banks = stationBanks(stations.length, Math.floor((width - sidePx) / cellPx));
  const isAt = (named: Named | null, { station, direction }: Place) =>
    named?.station === stations[station] && named?.direction === directions[direction];

  const move = (event: KeyboardEvent, place: Place) => {
    const to = placeAfter(place, event.key, stations.length, directions.length);
    if (to === null) return;
    event.preventDefault();
    box.current
      ?.querySelector<HTMLElement>(`[data-place="${to.station} ${to.direction}"]`)
      ?.focus();
  };

  return (
    <fieldset
      ref={box}
      className={`${styles.map} ${low ? styles.low : ''} ${isWide ? styles.wide : ''} ${isTall ? styles.tall : ''}`}
      aria-label="Stations"
      data-high={banks.length > 1 || directions.length > mostLowRows || undefined}
    >
      {banks.map(({ from, to }) => (
        <div
          key={from}
          className={styles.bank}
          data-kind={kind}
          data-single={directions.length === 1}
        >
          <div className={styles.stations} aria-hidden>
            {stations.slice(from, to).map((name) => (
              <span key={name}>{stations.length > 1 ? name : ''}</span>
            ))}
          </div>
          <div className={styles.directions} aria-hidden>
            {directions.map((name) => (
              <span key={name}>{directions.length > 1 ? name : ''}</span>
            ))}
          </div>
          <div className={`${styles.part} ${styles[kind]}`} data-even={directions.length % 2 === 0}>
            <div className={styles.cells}>
              {directions.map((direction, d) => (
                <div key={direction} className={styles.row}>
                  {stations.slice(from, to).map((station, offset) => {
                    const place = { station: from + offset, direction: d };
                    const cell = cells[d]?.[place.station] ?? { text: null, state: 'empty' };
                    return (
                      <Cell
                        key={station}
                        cell={cell}
                        place={place}
                        name={
                          placeWords({ station, direction }, { stations, directions }) || 'Size'
                        }
                        isNext={isAt(next, place)}
                        isLast={isAt(last, place)}
                        onPick={() => onPick(station, direction)}
                        onKeyDown={(event) => move(event, place)}
                      />
                    );
                  })}
                </div>
              ))}
            </div>
            {kind === 'outside' ? <Chamfers /> : null}
            {kind === 'length' ? null : <span className={styles.centreLine} aria-hidden />}
          </div>
        </div>
      ))}
    </fieldset>
  );
}

/** Room for the longest figure; never under what a thumb needs. */
function cellLeastPx(cells: Props['cells'], sizePx: number): number {
  const widths = cells.flat().map(({ text }) => textWidth({ text: text ?? '', sizePx }));
  return Math.max(56, ...widths) + 12;
}

type CellProps = {
  cell: StationCell;
  place: Place;
  name: string;
  isNext: boolean;
  isLast: boolean;
  onPick: () => void;
  onKeyDown: (event: KeyboardEvent) => void;
};

function Cell({ cell, place, name, isNext, isLast, onPick, onKeyDown }: CellProps) {
  const { text, state } = cell;
  return (
    <button
      type="button"
      className={styles.cell}
      data-place={`${place.station} ${place.direction}`}
      data-state={state}
      data-next={isNext || undefined}
      data-last={isLast || undefined}
      aria-label={`${name}: ${stationWords(text, state, isNext)}`}
      aria-current={isNext ? 'step' : undefined}
      tabIndex={isNext ? 0 : undefined}
      onClick={onPick}
      onKeyDown={onKeyDown}
    >
      {text === null ? null : <span className={styles.text}>{text}</span>}{' '}
      {isNext ? <span className={styles.next}>next</span> : null}
    </button>
  );
}

/** The four corners of a turned part, cut off at 6 px. */
function Chamfers() {
  return (['topLeft', 'topRight', 'bottomLeft', 'bottomRight'] as const).map((corner) => (
    <svg
      key={corner}
      className={`${styles.chamfer} ${styles[corner]}`}
      width={9}
      height={9}
      aria-hidden
    >
      <path className={styles.chamferGround} d="M0 0H8L0 8Z" />
      <line className={styles.chamferLine} x1={8} y1={0.5} x2={0.5} y2={8} />
    </svg>
  ));
}
