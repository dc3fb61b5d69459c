'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { wantedWords } from '@/lib/text/fit-words';
import { noFitsWords, plumbWords } from '@/lib/text/fits-sheet-words';
import { pairsFinalWords } from '@/lib/text/pair-record-words';
import { scaleWords } from '@/lib/text/scale';
import { saidWords } from '@/lib/text/ways-words';
import { FittedFitRules } from '../fit-rules/fit-rules';
import { useJob } from '../job/job-provider';
import { SheetFrame } from '../job/sheet-frame';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { EmptyState } from '../primitives/empty-state';
import { SelectField } from '../primitives/field';
import { ClearanceMatrix } from './clearance-matrix';
import { fitRulesOf, timesFullSizeOf } from './fit-rules-of';
import { FitDetails } from './fit-details';
import { FitsOut } from './fits-out';
import { FitsPaper } from './fits-paper';
import { NothingToMake } from './nothing-to-make';
import { PairList } from './pair-list';
import { TargetCard } from './target-card';
import { TwinTable } from './twin-table';
import { usePaper } from './use-paper';
import styles from './fits.module.css';

const WantedForm = dynamic(() => import('./wanted-form').then((one) => one.WantedForm));
const GovernsPanel = dynamic(() =>
  import('../governs/governs-panel').then((one) => one.GovernsPanel),
);
const HotColdPanel = dynamic(() =>
  import('../hot-cold/hot-cold-panel').then((one) => one.HotColdPanel),
);

/** What to make the next piece to, and which goes with which, one fit at a time. */
export function FitsSheet() {
  const { view, chosen } = useJob();
  const [fitId, setFitId] = useState<string | null>(null);
  const [asked, setAsked] = useState<string | null>(null);
  const printedAt = usePaper();
  const fit = view.fits.find((candidate) => candidate.fit.id === fitId) ?? view.fits[0];
  if (fit === undefined) {
    return (
      <SheetFrame current="Fits" number={3}>
        <h1 className="unseen">Fits</h1>
        <EmptyState sentence={noFitsWords}>
          <WantedForm fit={null} />
        </EmptyState>
        <FitsOut />
      </SheetFrame>
    );
  }
  const toMake = [...fit.toMake, ...fit.toBore];
  const started = toMake.find((target) => target.nowPm !== null);
  const target = toMake.find((one) => one.pieceId === asked) ?? started ?? toMake[0];
  const final = fit.pairs.filter((pair) => pair.state === 'final').length;
  const most = Math.min(fit.internals.length, fit.externals.length);
  const rules = fitRulesOf(view, fit, chosen);
  const sheet = (
    <SheetFrame
      current="Fits"
      number={3}
      left={[
        { label: 'Sizes at', value: 'as read' },
        { label: 'Rules drawn', value: scaleWords(timesFullSizeOf(rules)) },
      ]}
      right={[{ label: 'Pairs', value: pairsFinalWords(final, most) }]}
    >
      <div className={styles.head}>
        <h1>{fit.fit.name}</h1>
        <p className={styles.wanted}>
          {wantedWords(fit.fit, chosen)} {saidWords(fit.fit, chosen)} {plumbWords}
        </p>
      </div>
      {view.fits.length > 6 && (
        <SelectField
          label="Fit shown"
          value={fit.fit.id}
          onChange={setFitId}
          options={view.fits.map((one) => ({ value: one.fit.id, label: one.fit.name }))}
        />
      )}
      {view.fits.length > 1 && view.fits.length <= 6 && (
        <Choice
          label="Fit shown"
          name="fit"
          value={fit.fit.id}
          onChange={setFitId}
          options={view.fits.map((one) => ({ value: one.fit.id, label: one.fit.name }))}
        />
      )}
      <div className={styles.sheet}>
        <section className={styles.rules} aria-label="The two zones, to scale">
          <FittedFitRules data={rules} />
          <TwinTable data={rules} />
        </section>
        <div className={styles.columns}>
          <div className={styles.left}>
            {target === undefined ? (
              <NothingToMake fit={fit} />
            ) : (
              <TargetCard fit={fit} target={target} onAsk={setAsked} />
            )}
            <Button onClick={() => print()}>Print this sheet</Button>
          </div>
          <div className={styles.right}>
            <ClearanceMatrix key={fit.fit.id} fit={fit} onAsk={setAsked} />
            <PairList fit={fit} />
          </div>
        </div>
      </div>
      <FitDetails key={fit.fit.id} fit={fit} onMade={setFitId} />
      <FitsOut />
      <GovernsPanel key={`governs ${fit.fit.id}`} fit={fit} />
      <HotColdPanel key={`hot ${fit.fit.id}`} fit={fit} />
    </SheetFrame>
  );
  return (
    <>
      <div className="not-on-paper">{sheet}</div>
      {printedAt !== null && <FitsPaper fit={fit} at={printedAt} />}
    </>
  );
}
