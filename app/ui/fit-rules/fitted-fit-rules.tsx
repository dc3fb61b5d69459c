'use client';

import { useRef, useState } from 'react';
import { Button } from '../primitives/button';
import { useWidth } from '../strip/use-width';
import { FitRules } from './fit-rules';
import type { FitRulesData } from './fit-rules-data';
import styles from './fit-rules.module.css';

const onePairBelowPx = 600;

/** The two rules as wide as their box; on a phone one pair at a time, on the scale of all. */
export function FittedFitRules({
  data,
  firstWidth = 328,
}: {
  data: FitRulesData;
  firstWidth?: number;
}) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, firstWidth);
  const [pair, setPair] = useState(0);
  const pairs = [...data.ties, ...data.toMake];
  const shown = pairs[Math.min(pair, pairs.length - 1)];
  if (width >= onePairBelowPx || shown === undefined) {
    return (
      <div ref={box} className={styles.fitted}>
        <FitRules data={data} width={width} />
      </div>
    );
  }
  const at = pairs.indexOf(shown);
  return (
    <div ref={box} className={styles.fitted}>
      <FitRules data={data} width={width} onlyPair={at} />
      <div className={styles.steps}>
        <Button onClick={() => setPair(at - 1)} disabled={at === 0}>
          Pair before
        </Button>
        <output className={styles.which}>
          {shown.internal} with {shown.external}, {at + 1} of {pairs.length}
        </output>
        <Button onClick={() => setPair(at + 1)} disabled={at === pairs.length - 1}>
          Next pair
        </Button>
      </div>
    </div>
  );
}
