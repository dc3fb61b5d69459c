'use client';

import { useRef } from 'react';
import { SizeStrip } from './size-strip';
import type { StripData } from './strip-data';
import { largeLeastWidthPx, tabletFromPx, type StripSizeName } from './strip-metrics';
import styles from './strip.module.css';
import { useWidth } from './use-width';

type Props = {
  data: StripData;
  name: string;
  /** Left out, the large form of a phone or a tablet is taken by the width there is. */
  size?: StripSizeName;
  /** The width to draw before the box is measured, px. */
  firstWidth?: number;
};

/** Narrower than this, the box is not on the screen: there is nothing to draw in it. */
const leastWidthPx = 24;

/** A size strip that fills its box. */
export function FittedStrip({ data, name, size, firstWidth = 328 }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, firstWidth);
  const form = size ?? (width >= tabletFromPx ? 'large-tablet' : 'large-phone');
  const isLarge = form === 'large-tablet' || form === 'large-phone';
  return (
    <div ref={box} className={styles.fitted}>
      {width >= leastWidthPx && (
        <SizeStrip
          data={data}
          size={form}
          width={isLarge ? Math.max(width, largeLeastWidthPx) : width}
          name={name}
        />
      )}
    </div>
  );
}
