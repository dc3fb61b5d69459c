'use client';

import { gaugeEnough } from '@/lib/rules/cuts/gauge-enough';
import type { FitView } from '@/lib/rules/fit-view';
import type { Target } from '@/lib/rules/target';
import { formatLength } from '@/lib/units/format-length';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { gaugeEnoughWords } from '@/lib/text/gauge-enough-words';
import { shownLength, shownSize } from '@/lib/text/shown-size';
import { useCutSaid } from '../cut/use-cut-said';
import { resolutionOf, stripOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { LinkButton } from '../primitives/link-button';
import { WorkingFigure } from '../primitives/working-figure';
import { FittedStrip } from '../strip/fitted-strip';
import { MetalLeft } from './metal-left';
import styles from './fits.module.css';

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
  const step = resolutionOf(view, partnerCell, partnerFeature);
  const figure = (pm: number) => shownLength(pm, step, chosen);
  const governs = target.partnerSize.place;
  const partnerFigure = shownSize(target.partnerSize, step, chosen);
  const others = [...fit.toMake, ...fit.toBore].filter(({ pieceId }) => pieceId !== target.pieceId);
  const size = cell.size ?? target.partnerSize;
  const enough = gaugeEnough(size, target.limits, step);
  const poor = gaugeEnoughWords(
    enough,
    {
      gauge: view.sheet.gauges.find(({ id }) => id === size.gaugeId)?.name ?? '',
      mark: cell.size === null ? '' : mark,
      readings: size.count,
      expandedPm: size.expandedPm,
      bandPm: target.limits.upperPm - target.limits.lowerPm,
      resolutionPm: step,
    },
    chosen,
  );
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
        <WorkingFigure text={figure(target.targetPm)} />
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
            <b>{inward(target.noLargerPm, 'down')}</b>
          </dd>
          <dt>No smaller than</dt>
          <dd>
            <b>{inward(target.noSmallerPm, 'up')}</b>
          </dd>
        </dl>
      ) : (
        <p className={styles.decide}>
          The doubt of the two sizes is wider than the fit: these gauges cannot prove it. Measure{' '}
          {partner} again, finer, or make it to the target and say so on the record.
        </p>
      )}
      {poor === '' ? null : <p className={styles.decide}>{poor}</p>}
      <dl className={styles.facts}>
        {governs !== null && (
          <>
            <dt>Governed by</dt>
            <dd>
              {partner} {governs.station}, across {governs.direction}
            </dd>
          </>
        )}
        <MetalLeft target={target} said={said} resolutionPm={step} shown={chosen} />
      </dl>
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
          {others.slice(0, 12).map((other) => (
            <li key={other.pieceId}>
              <button type="button" onClick={() => onAsk(other.pieceId)}>
                {markOf(other.pieceId)} to {figure(other.targetPm)}, for {markOf(other.partnerId)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className={styles.care}>Spindle stopped before you measure.</p>
    </section>
  );

  /** A working limit at the gauge's own step, never rounded outward; a digit more where a step is too coarse. */
  function inward(pm: number, way: 'up' | 'down'): string {
    const decimals = decimalsForResolution(step, chosen.unit);
    const band = target.noLargerPm - target.noSmallerPm;
    const stepPm = band < 2 * step ? step / 10 : step;
    const rounded = way === 'up' ? Math.ceil(pm / stepPm) : Math.floor(pm / stepPm);
    return formatLength(Math.round(rounded * stepPm), {
      ...chosen,
      decimals: stepPm === step ? decimals : decimals + 1,
    });
  }
}
