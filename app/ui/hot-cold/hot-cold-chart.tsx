'use client';

import { useRef } from 'react';
import type { HotCold } from '@/lib/rules/heat/hot-cold';
import { hotChartKeyWords } from '@/lib/text/heat-words';
import type { Shown } from '@/lib/text/shown-size';
import { useWidth } from '../strip/use-width';
import { hotColdLayout } from './hot-cold-layout';
import styles from './hot-cold.module.css';

type Props = {
  hot: HotCold;
  fit: { minPm: number; maxPm: number };
  shown: Shown;
  /** What it shows, in a sentence. */
  title: string;
};

/** Clearance against temperature, to scale: both soaked, the bad moment, and the tightest point marked. */
export function HotColdChart({ hot, fit, shown, title }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = Math.max(240, useWidth(box, 560));
  const height = width < 480 ? 260 : 300;
  const at = hotColdLayout(hot, fit, shown, { width, height });
  const { plot } = at;
  const line = (points: readonly { x: number; y: number }[]) =>
    points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
  const unit = shown.unit === 'mm' ? 'mm clear' : 'inches clear';
  return (
    <div ref={box} className={styles.chart}>
      <svg width={at.width} height={at.height} role="img" aria-label={title}>
        <rect
          className={styles.band}
          x={plot.left}
          y={at.band.top}
          width={plot.right - plot.left}
          height={Math.max(1, at.band.bottom - at.band.top)}
        />
        {[at.band.top, at.band.bottom].map((y) => (
          <line key={y} className={styles.limit} x1={plot.left} x2={plot.right} y1={y} y2={y} />
        ))}
        {at.touching !== null && (
          <>
            <line
              className={styles.touching}
              x1={plot.left}
              x2={plot.right}
              y1={at.touching}
              y2={at.touching}
            />
            <text className={styles.touchingWord} x={plot.left + 6} y={at.touching - 5}>
              touching
            </text>
          </>
        )}
        <line
          className={styles.axis}
          x1={plot.left}
          x2={plot.left}
          y1={plot.top}
          y2={plot.bottom}
        />
        <line
          className={styles.axis}
          x1={plot.left}
          x2={plot.right}
          y1={plot.bottom}
          y2={plot.bottom}
        />
        {at.ticksX.map(({ x, y, text }) => (
          <g key={text}>
            <line className={styles.tick} x1={x} x2={x} y1={plot.bottom} y2={plot.bottom + 6} />
            <text className={styles.figure} x={x} y={y} textAnchor="middle">
              {text}
            </text>
          </g>
        ))}
        {at.ticksY.map(({ x, y, text }) => (
          <g key={text}>
            <line className={styles.tick} x1={plot.left - 5} x2={plot.left} y1={y - 4} y2={y - 4} />
            <text className={styles.figure} x={x} y={y} textAnchor="end">
              {text}
            </text>
          </g>
        ))}
        <text className={styles.small} x={plot.right} y={at.height - 6} textAnchor="end">
          °C of the inner piece
        </text>
        <text className={styles.small} x={2} y={at.height - 6}>
          {unit}
        </text>
        <polyline className={styles.soaked} points={line(at.soaked)} />
        <polyline className={styles.apart} points={line(at.apart)} />
        <rect className={styles.bad} x={at.bad.x - 4} y={at.bad.y - 4} width={8} height={8} />
        <circle className={styles.tight} cx={at.tight.x} cy={at.tight.y} r={9} />
        <circle className={styles.tight} cx={at.tightLabel.x - 8} cy={at.tightLabel.y - 5} r={6} />
        <text
          className={styles.tightLabel}
          x={at.tightLabel.x - 20}
          y={at.tightLabel.y}
          textAnchor={at.tightLabel.anchor}
        >
          {at.tightLabel.text}
        </text>
      </svg>
      <p className={styles.key}>{hotChartKeyWords}</p>
    </div>
  );
}
