'use client';

import {
  Chart as ChartJs,
  LinearScale,
  LineElement,
  PointElement,
  ScatterController,
  type ChartConfiguration,
  type ScatterDataPoint,
} from 'chart.js';
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { Chart as Canvas } from 'react-chartjs-2';
import { Twin } from '../primitives/twin';
import { paletteOf, paper, type Palette } from './palette';
import styles from './chart.module.css';

ChartJs.register(LinearScale, LineElement, PointElement, ScatterController);

type Props = {
  /** Says what the chart shows in a sentence, for those who cannot see it. */
  title: string;
  /** The same in a table. */
  table: ReactNode;
  /** How high it stands; a plot under another one is lower. */
  height?: 'full' | 'half' | 'low';
  config: (palette: Palette) => ChartConfiguration<'scatter', ScatterDataPoint[]>;
};

/** The one place a chart.js chart is drawn: theme followed, title and table demanded, nothing animated. */
export function Chart({ title, table, config, height = 'full' }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const palette = usePalette(box);
  const made = useMemo(() => config(palette ?? paper), [config, palette]);
  return (
    <figure className={styles.chart}>
      <div ref={box} className={styles.canvas} data-height={height}>
        {palette !== null && (
          <Canvas
            // A chart keeps the plugins it was made with: other plugins are another chart.
            key={keyOf(made.plugins ?? made)}
            type="scatter"
            data={made.data}
            options={made.options ?? {}}
            plugins={made.plugins ?? []}
            role="img"
            aria-label={title}
          />
        )}
      </div>
      <Twin>{table}</Twin>
    </figure>
  );
}

const keys = new WeakMap<object, number>();
let count = 0;
function keyOf(made: object): number {
  const known = keys.get(made);
  if (known !== undefined) return known;
  count += 1;
  keys.set(made, count);
  return count;
}

/** The theme's colours where the chart stands, anew when theme, machine or paper change; null before fonts and theme are known. */
function usePalette(box: React.RefObject<HTMLElement | null>): Palette | null {
  const [palette, setPalette] = useState<Palette | null>(null);
  useEffect(() => {
    const read = () => {
      if (box.current !== null) setPalette(paletteOf(box.current));
    };
    void document.fonts.load("700 16px 'B612'").finally(read);
    const watch = new MutationObserver(read);
    watch.observe(document.documentElement, { attributeFilter: ['data-theme'] });
    const queries = ['(prefers-color-scheme: dark)', 'print', '(forced-colors: active)'].map(
      (query) => matchMedia(query),
    );
    for (const query of queries) query.addEventListener('change', read);
    return () => {
      watch.disconnect();
      for (const query of queries) query.removeEventListener('change', read);
    };
  }, [box]);
  return palette;
}
