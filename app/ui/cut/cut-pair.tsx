import type { CutView } from '@/lib/rules/cuts/cut-view';
import { dialUnit, type Slide } from '@/lib/rules/cuts/slide';
import { dialFigure, dialWords, fromToWords } from '@/lib/text/cut-words';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import { targetFigures } from '@/lib/text/target-figures';
import { emsOf } from '../primitives/ems-of';
import styles from './cut.module.css';
import type { OnDial } from './use-put-on';

type Props = {
  cut: CutView;
  slide: Slide | null;
  onDial: OnDial | null;
  shown: Shown;
  onStep: (by: 1 | -1) => void;
};

const onDiameter = new Set(['outside', 'bore']);

/** The two figures of the Cut screen: what is left, and what to put on the dial for the next cut. */
export function CutPair({ cut, slide, onDial, shown, onStep }: Props) {
  const { leftPm, resolutionPm, aim, turnToPm, advice } = cut;
  const past = advice.kind === 'past';
  const lappedPm = turnToPm - aim.aimPm;
  const turnTo = targetFigures(
    {
      targetPm: turnToPm,
      noLargerPm: aim.noLargerPm + lappedPm,
      noSmallerPm: aim.noSmallerPm + lappedPm,
    },
    resolutionPm,
    shown,
  ).size;
  const unit = slide === null ? shown.unit : dialUnit(slide, shown.unit);
  const canStep = slide !== null && (cut.advice.kind === 'cut' || cut.advice.kind === 'spring');
  const left =
    leftPm === null
      ? '?'
      : shownLength(past ? advice.byPm : Math.max(0, leftPm), resolutionPm, shown);
  const put =
    onDial !== null ? dialFigure(onDial.dialPm, { ...shown, unit }) : canStep ? '0' : '\u2013';
  return (
    <div className={styles.pair}>
      <section className={styles.left} aria-label="Left">
        <h2>{leftTitle(cut)}</h2>
        <Big figure={left} past={past} />
        <p className={styles.under}>
          {aim.now === null
            ? `to ${turnTo}`
            : past || leftPm! <= 0
              ? shownLength(aim.now.valuePm, resolutionPm, shown)
              : fromToWords(aim.now.valuePm, turnTo, { side: aim.side, resolutionPm }, shown)}
        </p>
      </section>
      <section className={styles.put} aria-label="Put on the dial">
        <h2>Put on the dial</h2>
        <Big figure={put} />
        <p className={styles.under}>
          {slide === null
            ? 'no slide said yet'
            : dialWords({ ...slide, unit }, onDial?.divisions ?? null, shown)}
        </p>
        {canStep && (
          <div className={styles.steps}>
            <button
              type="button"
              aria-label="One division less"
              onClick={() => onStep(-1)}
              disabled={onDial === null}
            >
              {'\u2212'}
            </button>
            <button type="button" aria-label="One division more" onClick={() => onStep(1)}>
              +
            </button>
          </div>
        )}
      </section>
    </div>
  );
}

/** As large as its column takes it: an inch has two figures more. */
function Big({ figure, past = false }: { figure: string; past?: boolean }) {
  const style = { '--ems': emsOf(figure) } as React.CSSProperties;
  return (
    <p className={styles.big} data-past={past || undefined} style={style}>
      {figure}
    </p>
  );
}

function leftTitle({ advice, feature }: CutView): string {
  if (advice.kind === 'past') return 'Past its limit by';
  return onDiameter.has(feature.kind) ? 'Left on diameter' : 'Left to take off';
}
