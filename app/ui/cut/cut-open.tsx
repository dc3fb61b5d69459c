'use client';

import { useEffect, useRef, useState } from 'react';
import type { CutView } from '@/lib/rules/cuts/cut-view';
import { dialUnit } from '@/lib/rules/cuts/slide';
import { spindleWords } from '@/lib/text/bench-target';
import { cutHeadWords } from '@/lib/text/cut-head-words';
import { warmWords } from '@/lib/text/cut-warm-words';
import { gaugeEnoughWords } from '@/lib/text/gauge-enough-words';
import { useTitle } from '../bench/use-title';
import { useWakeLock } from '../bench/use-wake-lock';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { LinkButton } from '../primitives/link-button';
import { ChangedRow } from './changed-row';
import { CutLog } from './cut-log';
import { CutPair } from './cut-pair';
import { CutStrip } from './cut-strip';
import { useCutSwitch } from './cut-switch';
import { adviceSaid, learnedSaid } from './cut-words-of';
import styles from './cut.module.css';
import { DialRule } from './dial-rule';
import { PastPanel } from './past-panel';
import { SaidLine } from './said-line';
import { SetUp } from './set-up';
import { useCutKeys } from './use-cut-keys';
import type { CutSaying } from './use-cut-said';
import { useKeptTime } from './use-kept-time';
import { useKeepCut, type CutTaken } from './use-keep-cut';
import { usePutOn } from './use-put-on';
import { WarmField } from './warm-field';

type Props = { cut: CutView; saying: CutSaying; personId: string | null };

/** The Cut screen with a piece on it. */
export function CutOpen({ cut, saying, personId }: Props) {
  const { view, chosen } = useJob();
  const ways = useCutSwitch();
  const { take, trouble } = useKeepCut();
  const { said, dialAtPm } = saying;
  const { slide, lapPm } = said;
  const { advice, aim, piece, part, feature, cell, resolutionPm } = cut;
  const { onDial, step } = usePutOn(cut, slide);
  const [open, setOpen] = useState<'slide' | 'warm' | null>(null);
  const keptAt = useKeptTime(cut);
  const heading = useRef<HTMLHeadingElement>(null);
  useTitle(`Cut ${piece.mark}`);
  useWakeLock();
  // What stands here is read out when the screen comes up, and no button is pressed by a key still held.
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);

  const at = { pieceId: piece.id, featureId: feature.id };
  const toBench = () => ways?.toBench(at);
  const measured = !cut.held && aim.now !== null;
  const isLast = advice.kind === 'cut' || advice.kind === 'spring' || advice.kind === 'lap';

  async function taken(more: Pick<CutTaken, 'spring' | 'askedPm'>): Promise<void> {
    const kept = await take(cell, personId, {
      ...more,
      partnerPieceId: aim.partner?.pieceId ?? null,
      aimPm: cut.turnToPm,
      dial: slide?.dial ?? null,
      divisionPm: slide?.divisionPm ?? null,
      dialUnit: slide?.unit ?? null,
      fineFeed: slide?.fineFeed ?? null,
      tool: slide?.tool ?? '',
      changed: said.changed,
      temperatureMilliC: said.temperatureMilliC,
    });
    if (!kept) return;
    saying.sayChanged(null);
    if (dialAtPm !== null && more.askedPm > 0) saying.sayDialAt(dialAtPm + onDial!.dialPm);
    toBench();
  }
  const takeCut =
    measured && onDial !== null
      ? () => void taken({ spring: false, askedPm: onDial.askedPm })
      : null;
  const takeSpring =
    measured && (advice.kind === 'cut' || advice.kind === 'spring')
      ? () => void taken({ spring: true, askedPm: 0 })
      : null;
  const takeLap =
    measured && advice.kind === 'lap' ? () => void taken({ spring: false, askedPm: 0 }) : null;
  const springFirst = advice.kind === 'spring' && onDial === null;
  const main = takeLap ?? (springFirst ? takeSpring : takeCut);
  useCutKeys({ main: main ?? (isLast ? null : toBench), spring: takeSpring, bench: toBench, step });

  const markOf = (id: string) => view.sheet.pieces.find((one) => one.id === id)?.mark ?? '';
  const partnerFeature =
    aim.partner === null
      ? null
      : (view.sheet.features.find(({ id }) => id === aim.partner!.featureId) ?? null);
  const head = cutHeadWords(
    {
      side: aim.side,
      partner:
        aim.partner === null || partnerFeature === null
          ? null
          : {
              mark: markOf(aim.partner.pieceId),
              feature: partnerFeature.name,
              sizePm: aim.partner.size.valuePm,
              resolutionPm: resolutionOf(
                view,
                view.cell(aim.partner.pieceId, partnerFeature.id),
                partnerFeature,
              ),
            },
      asDrawn: feature.asDrawn,
      cuts: cut.steps.length,
    },
    chosen,
  );
  const gauge = view.sheet.gauges.find(({ id }) => id === cut.gauge?.gaugeId)?.name ?? '';
  const poor = gaugeEnoughWords(
    cut.gauge,
    {
      gauge,
      mark: aim.now === null ? '' : piece.mark,
      readings: aim.now?.count ?? 0,
      expandedPm: (aim.now ?? aim.partner?.size)?.expandedPm ?? 0,
      bandPm: aim.limits.upperPm - aim.limits.lowerPm,
      resolutionPm,
    },
    chosen,
  );
  const warm = warmWords(cut.warm, { material: part.material, resolutionPm }, chosen);
  const learned = learnedSaid(view, cut, slide, chosen);
  const isOver = advice.kind === 'past' || advice.kind === 'made';
  const needsSlide = slide === null && advice.kind === 'no slide';
  return (
    <main className={styles.cut} data-past={advice.kind === 'past' || undefined}>
      <header className={styles.head}>
        <button type="button" className={styles.back} onClick={toBench}>
          <span className={styles.mark}>{piece.mark}</span>
          <span className={styles.names}>
            <span className={styles.part}>{part.name}</span>
            <span className={styles.feature}>{head.line}</span>
          </span>
          <span className="unseen">. Back to the bench</span>
        </button>
        <p className={styles.kept}>
          {head.count}
          <br />
          {keptAt}
        </p>
      </header>
      <h1 ref={heading} className="unseen" tabIndex={-1}>
        Cut {piece.mark} {feature.name.toLowerCase()}
      </h1>
      <div className={styles.now}>
        <CutPair cut={cut} slide={slide} onDial={onDial} shown={chosen} onStep={step} />
        {onDial !== null && slide !== null && (
          <DialRule
            divisionPm={slide.divisionPm}
            divisions={onDial.divisions}
            dialAtPm={dialAtPm}
            shown={{ ...chosen, unit: dialUnit(slide, chosen.unit) }}
          />
        )}
        <p className={styles.sentence} role="status">
          <SaidLine said={adviceSaid(view, cut, { slide, lapPm, onDial }, chosen)} />
        </p>
        {cut.choices === null ? null : (
          <PastPanel cut={cut} choices={cut.choices} shown={chosen} personId={personId} />
        )}
        {aim.now === null ? null : (
          <div className={styles.strip}>
            <CutStrip cut={cut} onDial={onDial} shown={chosen} />
          </div>
        )}
      </div>
      <div className={styles.log}>
        <CutLog cut={cut} slide={slide} onDial={onDial} shown={chosen} />
        {learned.length === 0 || isOver ? null : (
          <p className={styles.sentence}>
            <SaidLine said={learned} />
          </p>
        )}
        {needsSlide || open === 'slide' ? (
          <SetUp saying={saying} shown={chosen} isNew={needsSlide} onDone={() => setOpen(null)} />
        ) : (
          advice.kind !== 'past' && (
            <div className={styles.says}>
              <ChangedRow changed={said.changed} onSay={saying.sayChanged} />
              {open === 'warm' || said.temperatureMilliC !== null ? (
                <WarmField
                  decimal={chosen.decimal}
                  milliC={said.temperatureMilliC}
                  onSay={saying.sayWarm}
                />
              ) : (
                <button type="button" className={styles.textButton} onClick={() => setOpen('warm')}>
                  The piece is warm
                </button>
              )}
              <button type="button" className={styles.textButton} onClick={() => setOpen('slide')}>
                {slide?.tool === undefined ? 'The slide' : `The slide: ${slide.tool}`}
              </button>
            </div>
          )
        )}
      </div>
      <div className={styles.foot}>
        {poor === '' || isOver ? null : <p className={styles.decide}>{poor}</p>}
        <p className={cut.warm.kind === 'wait' ? styles.decide : styles.care}>
          {warm} {spindleWords}
        </p>
        {trouble === null ? null : <p role="alert">{trouble}</p>}
      </div>
      <div className={styles.buttons}>
        {main === null ? (
          <Button
            bench
            {...(advice.kind === 'past' || needsSlide ? {} : { kind: 'main' as const })}
            onClick={toBench}
          >
            {measured && !needsSlide ? 'To the bench' : `Measure ${piece.mark}`}
          </Button>
        ) : (
          <Button bench kind="main" onClick={main}>
            {takeLap !== null
              ? 'Lapped, measure'
              : springFirst
                ? 'Spring pass taken, measure'
                : 'Cut taken, measure'}
          </Button>
        )}
        {main !== null && takeSpring !== null && !springFirst && (
          <Button bench onClick={takeSpring}>
            Spring pass instead
          </Button>
        )}
        {advice.kind === 'made' && aim.partner !== null && (
          <LinkButton bench href={`/jobs/${view.sheet.job.id}/fits`}>
            To the fits
          </LinkButton>
        )}
      </div>
    </main>
  );
}
