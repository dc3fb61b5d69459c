'use client';

import { useState } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { sizeFromBench, tenWarmerAtBench } from '@/lib/rules/heat/bench-sizes';
import { hotCold, type HotSide } from '@/lib/rules/heat/hot-cold';
import { materialOf } from '@/lib/rules/heat/material-of';
import {
  assumedWords,
  farWords,
  guessedTemperaturesWords,
  hotCareWords,
  hotChartWords,
  hotNeedsWords,
  readWarmWords,
  tenMoreWords,
  tightPointWords,
  touchWords,
} from '@/lib/text/heat-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Field, SelectField } from '../primitives/field';
import { Panel } from '../primitives/panel';
import { Twin } from '../primitives/twin';
import { HotColdChart } from './hot-cold-chart';
import { HotColdTable } from './hot-cold-table';
import styles from './hot-cold.module.css';
import { SideMaterial } from './side-material';
import { useTemperatures, type TemperatureKey } from './use-temperatures';

/** Clearance against temperature of one pair: soaked over a range, and at the bad moment. All estimates. */
export function HotColdPanel({ fit }: { fit: FitView }) {
  const { view, chosen } = useJob();
  const { change, trouble, busy } = useThings();
  const temperatures = useTemperatures(fit.fit, chosen.decimal);
  const pairs = fit.pairs.flatMap(({ internalPieceId, externalPieceId }) => {
    const [internal, external] = [fit.every.get(internalPieceId), fit.every.get(externalPieceId)];
    if (internal === undefined || external === undefined) return [];
    return [{ key: `${internalPieceId} ${externalPieceId}`, internal, external }];
  });
  const [asked, setAsked] = useState<string | null>(null);
  const pair = asked === 'aim' ? undefined : (pairs.find(({ key }) => key === asked) ?? pairs[0]);
  const partOf = (partId: string) => view.sheet.parts.find(({ id }) => id === partId)!;
  const [outer, inner] = [partOf(fit.internalFeature.partId), partOf(fit.externalFeature.partId)];
  const own = view.sheet.materials;
  const [boreOf, shaftOf] = [materialOf(outer.material, own), materialOf(inner.material, own)];
  const names = {
    outer: pair?.internal.piece.mark ?? `the ${outer.name.toLowerCase()}`,
    inner: pair?.external.piece.mark ?? `the ${inner.name.toLowerCase()}`,
  };
  const { milliC } = temperatures;
  const sides = sidesOf();
  const hot =
    sides === null || milliC === null
      ? null
      : hotCold({
          ...sides,
          soakedC: { lowest: milliC.lowest / 1000, highest: milliC.highest / 1000 },
          badC: { outer: milliC.outer / 1000, inner: milliC.inner / 1000 },
        });
  const fields: [TemperatureKey, string][] = [
    ['lowest', 'Both, coldest'],
    ['highest', 'Both, hottest'],
    ['outer', `Bad moment, ${outer.name.toLowerCase()}`],
    ['inner', `Bad moment, ${inner.name.toLowerCase()}`],
  ];
  return (
    <div className={styles.panel}>
      <Panel title="Hot and cold" note="estimates">
        <div className={styles.columns}>
          <div className={styles.asked}>
            <SelectField
              label="For"
              value={pair?.key ?? 'aim'}
              onChange={setAsked}
              options={[
                ...pairs.map(({ key, internal, external }) => ({
                  value: key,
                  label: `${external.piece.mark} in ${internal.piece.mark}, as measured`,
                })),
                { value: 'aim', label: 'a pair at the aim, on the nominal' },
              ]}
            />
            <SideMaterial part={outer} match={boreOf} />
            <SideMaterial part={inner} match={shaftOf} />
            <div className={styles.two}>
              {fields.map(([key, label]) => (
                <Field
                  key={key}
                  label={label}
                  hint="°C"
                  value={temperatures.text[key]}
                  onChange={(event) => temperatures.edit(key, event.target.value)}
                  error={temperatures.errors[key]}
                />
              ))}
            </div>
            {temperatures.isGuess && <p className={styles.remark}>{guessedTemperaturesWords}</p>}
            <Button
              disabled={busy || milliC === null || temperatures.isKept}
              onClick={() => void keep()}
            >
              {temperatures.isKept ? 'Kept with this fit' : 'Keep these temperatures'}
            </Button>
            {trouble !== null && (
              <p role="alert" className={styles.decide}>
                {trouble}
              </p>
            )}
          </div>
          <div className={styles.said}>
            {hot === null ? (
              <p className={styles.sentence}>{hotNeedsWords}</p>
            ) : (
              <>
                <HotColdChart
                  hot={hot}
                  fit={fit.fit}
                  shown={chosen}
                  title={hotChartWords(hot, names, chosen)}
                />
                <p className={styles.first}>{tightPointWords(hot, names, chosen)}</p>
                <p className={styles.sentence}>{tenMoreWords(hot, names, chosen)}</p>
                <p className={styles.sentence}>{touchWords(hot, names, chosen)}</p>
                {assumed().map((words) => (
                  <p key={words} className={styles.remark}>
                    {words}
                  </p>
                ))}
                <Twin>
                  <HotColdTable hot={hot} names={names} shown={chosen} />
                </Twin>
              </>
            )}
            <p className={styles.care}>{hotCareWords}</p>
          </div>
        </div>
      </Panel>
    </div>
  );

  /** Both sides at 20 degrees C: as measured, brought there where readings say how warm; else the aim. */
  function sidesOf(): { bore: HotSide; shaft: HotSide } | null {
    if (boreOf === null || shaftOf === null) return null;
    const [bore, shaft] = [boreOf.material, shaftOf.material];
    const { nominalPm } = fit.internalFeature;
    if (pair === undefined) {
      return {
        bore: { sizePm: nominalPm, material: bore },
        shaft: { sizePm: nominalPm - fit.fit.aimPm, material: shaft },
      };
    }
    const warm = benchSizes();
    if (pair.internal.size === null || pair.external.size === null) return null;
    return {
      bore: { sizePm: warm.internal?.sizePm ?? pair.internal.size.valuePm, material: bore },
      shaft: { sizePm: warm.external?.sizePm ?? pair.external.size.valuePm, material: shaft },
    };
  }

  function benchSizes() {
    const of = (side: 'internal' | 'external') => {
      const matched = side === 'internal' ? boreOf : shaftOf;
      const piece = pair?.[side];
      if (piece === undefined || piece.size === null || matched === null) return null;
      const feature = side === 'internal' ? fit.internalFeature : fit.externalFeature;
      const cell = view.cell(piece.piece.id, feature.id);
      const { readings } = view.sheet;
      return sizeFromBench(cell, piece.size.valuePm, matched.material, readings);
    };
    return { internal: of('internal'), external: of('external') };
  }

  /** What the sizes are taken to be, and how far the coefficients are from where they were measured. */
  function assumed(): string[] {
    const warm = benchSizes();
    const read = (['internal', 'external'] as const).flatMap((side) => {
      const at = warm[side];
      return at === null ? [] : [readWarmWords(pair![side].piece.mark, at, chosen)];
    });
    const far = milliC === null ? null : farWords(Object.values(milliC).map((one) => one / 1000));
    return [
      ...read,
      ...(read.length === 2 ? [] : [assumedWords({ offPm: tenWarmerAtBench(sides!) }, chosen)]),
      ...(far === null ? [] : [far]),
    ];
  }

  async function keep() {
    await change('fit', fit.fit.id, { version: fit.fit.version, ...temperatures.fields });
  }
}
