import { dialSetting } from '@/lib/maths/fit/dial-setting';
import type { CutSaid } from '@/lib/rules/cuts/cut-view';
import { dialOf, dialUnit } from '@/lib/rules/cuts/slide';
import type { Target } from '@/lib/rules/target';
import { dialFigure, dialWords } from '@/lib/text/cut-words';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import { leftOnWords, noDialWords, nowOnWords } from '@/lib/text/target-card-words';
import type { Feature } from '@/lib/schema/feature';

type Props = {
  target: Target;
  kind: Feature['kind'];
  said: CutSaid;
  resolutionPm: number;
  shown: Shown;
};

/** What a piece measures now and the metal still on it: on diameter, and on the dial of the slide it is cut with. */
export function MetalLeft({ target, kind, said, resolutionPm, shown }: Props) {
  const { nowPm, leftPm } = target;
  const { slide, lapPm } = said;
  const figure = (pm: number) => shownLength(pm, resolutionPm, shown);
  if (nowPm === null || leftPm === null) {
    return (
      <>
        <dt>{nowOnWords(kind)}</dt>
        <dd>not measured yet</dd>
      </>
    );
  }
  const toCutPm = Math.max(0, leftPm - lapPm);
  // Whole divisions, rounded to the side that leaves metal on: for a shaft and for a bore alike.
  const setting = slide === null ? null : dialSetting(toCutPm, dialOf(slide));
  const unit = slide === null ? shown.unit : dialUnit(slide, shown.unit);
  return (
    <>
      <dt>{nowOnWords(kind)}</dt>
      <dd>{figure(nowPm)}</dd>
      <dt>{leftOnWords(kind, lapPm > 0)}</dt>
      <dd>
        {figure(toCutPm)}
        {lapPm > 0 ? `, ${figure(lapPm)}` : ''}
      </dd>
      {setting === null || slide === null ? (
        <>
          <dt>{noDialWords.label}</dt>
          <dd>{noDialWords.says}</dd>
        </>
      ) : (
        <>
          <dt>On the {dialWords({ ...slide, unit }, setting.divisions, shown)}</dt>
          <dd>{dialFigure(setting.dialPm, { ...shown, unit })}</dd>
        </>
      )}
    </>
  );
}
