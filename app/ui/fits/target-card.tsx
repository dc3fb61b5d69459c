'use client';

import { Fragment } from 'react';
import { drawnLimits } from '@/lib/rules/feature-limits';
import { gaugeForTarget } from '@/lib/rules/gauge-for-target';
import { targetHeat } from '@/lib/rules/heat/target-heat';
import type { FitView } from '@/lib/rules/fit-view';
import { isPastDrawn } from '@/lib/rules/past-drawn';
import type { Target } from '@/lib/rules/target';
import { spindleWords } from '@/lib/text/bench-target';
import { gaugeEnoughWords } from '@/lib/text/gauge-enough-words';
import { shownSize } from '@/lib/text/shown-size';
import {
  besideAimWords,
  governedByWords,
  moreToMakeWords,
  notProvableWords,
  pastDrawnWords,
  targetHeatRemark,
  targetHeatRows,
} from '@/lib/text/target-card-words';
import { targetFigures } from '@/lib/text/target-figures';
import { useCutSaid } from '../cut/use-cut-said';
import { resolutionOf, stripOf, targetStepOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { LinkButton } from '../primitives/link-button';
import { WorkingFigure } from '../primitives/working-figure';
import { FittedStrip } from '../strip/fitted-strip';
import { MetalLeft } from './metal-left';
import styles from './fits.module.css';

/** So many others are named. */
const othersMost = 12;

type Props = { fit: FitView; target: Target; onAsk: (pieceId: string) => void };

/** What to make one piece to: its target, its working limits, what is left, and what it is made for. */
export function TargetCard({ fit, target, onAsk }: Props) {
  const { view, chosen } = useJob();
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const mark = markOf(target.pieceId);
  const partner = markOf(target.partnerId);
  const [feature, partnerFeature] =
    target.make === 'external'
      ? [fit.externalFeature, fit.internalFeature]
      : [fit.internalFeature, fit.externalFeature];
  const at = { pieceId: target.pieceId, featureId: feature.id };
  const { said } = useCutSaid(view, at);
  const cell = view.cell(target.pieceId, feature.id);
  const partnerCell = view.cell(target.partnerId, partnerFeature.id);
  const partnerStep = resolutionOf(view, partnerCell, partnerFeature);
  const step = targetStepOf(view, fit, target);
  const figures = targetFigures(target, step, chosen);
  const partnerFigure = shownSize(target.partnerSize, partnerStep, chosen);
  const others = [...fit.toMake, ...fit.toBore].filter(({ pieceId }) => pieceId !== target.pieceId);
  const own = fit.every.get(target.pieceId)?.size ?? null;
  const size = own ?? target.partnerSize;
  const sizes = { own, partner: target.partnerSize };
  const enough = gaugeForTarget(sizes, target.limits, view.cells.gauges);
  const heat = targetHeat(view.sheet, fit, target);
  const partName = (partId: string) =>
    view.sheet.parts.find(({ id }) => id === partId)?.name.toLowerCase() ?? '';
  const names = {
    outer: partName(fit.internalFeature.partId),
    inner: partName(fit.externalFeature.partId),
  };
  const poor = gaugeEnoughWords(
    enough,
    {
      gauge: view.sheet.gauges.find(({ id }) => id === size.gaugeId)?.name ?? '',
      mark: own === null ? '' : mark,
      readings: size.count,
      expandedPm: size.expandedPm,
      bandPm: target.limits.upperPm - target.limits.lowerPm,
      resolutionPm: step,
    },
    chosen,
  );
  const drawn = drawnLimits(feature);
  const query = new URLSearchParams({ piece: at.pieceId, feature: at.featureId });
  const bench = `/jobs/${fit.fit.jobId}/bench?${query}`;
  return (
    <section className={styles.card} aria-label={`Make ${mark} to ${partner}`}>
      <div className={styles.cardHead}>
        <h2>
          Make {mark} to {partner}
        </h2>
        <p>
          {partner} is {partnerFigure.value} ± {partnerFigure.plusMinus}
        </p>
      </div>
      <p className={styles.target}>
        <WorkingFigure text={figures.size} />
      </p>
      <FittedStrip
        data={{
          ...stripOf(view, cell, feature, chosen),
          ...target.limits,
          aimPm: target.targetPm,
          live: target.nowPm !== null,
        }}
        size="card"
        name={`${mark} ${feature.name}`}
      />
      {target.provable ? (
        <dl className={styles.facts}>
          <dt>No larger than</dt>
          <dd>
            <b>{figures.largest}</b>
          </dd>
          <dt>No smaller than</dt>
          <dd>
            <b>{figures.smallest}</b>
          </dd>
        </dl>
      ) : (
        <p className={styles.decide}>{notProvableWords(partner)}</p>
      )}
      {target.targetPm !== target.aimPm && (
        <p className={styles.estimate}>{besideAimWords(target.aimPm, step, chosen)}</p>
      )}
      {isPastDrawn(target.targetPm, drawn) && (
        <p className={styles.decide}>{pastDrawnWords(drawn, step, chosen)}</p>
      )}
      {poor === '' ? null : <p className={styles.decide}>{poor}</p>}
      <dl className={styles.facts}>
        <dt>Governed by</dt>
        <dd>{governedByWords(partner, target.partnerSize.place, partnerFeature)}</dd>
        <MetalLeft
          target={target}
          kind={feature.kind}
          said={said}
          resolutionPm={step}
          shown={chosen}
        />
      </dl>
      {heat !== null && (
        <>
          <dl className={styles.facts} aria-label="Hot, estimated">
            {targetHeatRows(heat, names, chosen).map(({ label, figure: about }) => (
              <Fragment key={label}>
                <dt>{label}</dt>
                <dd>{about}</dd>
              </Fragment>
            ))}
          </dl>
          <p className={styles.estimate}>{targetHeatRemark(heat.isGuess)}</p>
        </>
      )}
      {target.nowPm === null ? (
        <LinkButton kind="main" href={bench}>
          Measure {mark}
        </LinkButton>
      ) : (
        <>
          <LinkButton kind="main" href={`/jobs/${fit.fit.jobId}/cut?${query}`}>
            Cut {mark}
          </LinkButton>
          <LinkButton href={bench}>Measure {mark}</LinkButton>
        </>
      )}
      {others.length > 0 && (
        <ul className={styles.others} aria-label="Also to make">
          {others.slice(0, othersMost).map((other) => (
            <li key={other.pieceId}>
              <button type="button" onClick={() => onAsk(other.pieceId)}>
                {markOf(other.pieceId)} to{' '}
                {targetFigures(other, targetStepOf(view, fit, other), chosen).size}, for{' '}
                {markOf(other.partnerId)}
              </button>
            </li>
          ))}
          {others.length > othersMost && <li>{moreToMakeWords(others.length - othersMost)}</li>}
        </ul>
      )}
      <p className={styles.care}>{spindleWords}</p>
    </section>
  );
}
