'use client';

import { useRef } from 'react';
import { dialRuleWords } from '@/lib/text/dial-rule-words';
import { dialFigure } from '@/lib/text/cut-words';
import type { Shown } from '@/lib/text/shown-size';
import { useWidth } from '../strip/use-width';
import { dialRuleLayout } from './dial-rule-layout';
import styles from './dial-rule.module.css';

type Props = {
  divisionPm: number;
  divisions: number;
  /** What the dial reads now; null where it is set to nothing first. */
  dialAtPm: number | null;
  shown: Shown;
};

const high = 62;
/** Narrower than this, the box is not on the screen. */
const leastPx = 120;

/** A strip of the handwheel: where it stands, and where it is turned to. */
export function DialRule({ divisionPm, divisions, dialAtPm, shown }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, 358);
  const standsPm = dialAtPm ?? 0;
  const standsAt = standsPm / divisionPm;
  const turnTo = standsAt + divisions;
  const figure = (pm: number) => dialFigure(pm, shown);
  const { ticks, standsX, turnX } = dialRuleLayout({
    width,
    standsAt,
    turnTo,
    label: (division) => figure(Math.round(division * divisionPm)),
  });
  const words = dialRuleWords(
    { standsAt: figure(standsPm), turnTo: figure(standsPm + divisions * divisionPm) },
    dialAtPm !== null,
  );
  return (
    <div ref={box} className={styles.box}>
      {width < leastPx ? null : (
        <svg
          className={styles.rule}
          width={width}
          height={94}
          viewBox={`0 0 ${width} 94`}
          role="img"
          aria-label={words.whole}
        >
          <rect className={styles.wheel} x={0.75} y={1} width={width - 1.5} height={high - 14} />
          <rect
            className={styles.wash}
            x={Math.min(standsX, turnX)}
            y={1}
            width={Math.abs(turnX - standsX)}
            height={high - 14}
          />
          {ticks.map(({ x, kind, label, labelX }) => (
            <g key={x}>
              <line
                className={kind === 'minor' ? styles.minor : styles.major}
                x1={x}
                x2={x}
                y1={high - 13}
                y2={high - { minor: 24, medium: 30, major: 36 }[kind]}
              />
              {label === null ? null : (
                <text className={styles.figure} x={labelX} y={18} textAnchor="middle">
                  {label}
                </text>
              )}
            </g>
          ))}
          <path className={styles.index} d={`M ${standsX} ${high - 13} v 12 m -6 0 h 12`} />
          <line className={styles.turn} x1={turnX} x2={turnX} y1={-4} y2={high} />
          <text
            className={styles.stands}
            x={standsX}
            y={82}
            textAnchor="end"
            dx={divisions === 0 ? -8 : 24}
          >
            {words.stands}
          </text>
          <text
            className={styles.to}
            x={turnX}
            y={82}
            dx={standsX + 32 > turnX ? 8 + Math.max(0, standsX + 32 - turnX) : 8}
          >
            {words.turn}
          </text>
        </svg>
      )}
    </div>
  );
}
