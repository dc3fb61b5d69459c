'use client';

import type { CutView } from '@/lib/rules/cuts/cut-view';
import { aimVerdict } from '@/lib/rules/cuts/next-cut-advice';
import { guardFactor } from '@/lib/rules/verdict';
import type { Shown } from '@/lib/text/shown-size';
import { FittedStrip } from '../strip/fitted-strip';
import type { StripData } from '../strip/strip-data';
import { stripSpan } from '../strip/strip-span';
import type { OnDial } from './use-put-on';

type Props = { cut: CutView; onDial: OnDial | null; shown: Shown };

/** The size strip of a piece being cut: where it is, where the next cut is expected to leave it, where to stop. */
export function CutStrip({ cut, onDial, shown }: Props) {
  const { aim, piece, feature, resolutionPm, turnToPm } = cut;
  const { now } = aim;
  const data: StripData = {
    ...shown,
    resolutionPm,
    ...aim.limits,
    aimPm: aim.aimPm,
    live: true,
    ...(now === null
      ? {}
      : { guardPm: guardFactor * Math.hypot(now.standardPm, aim.limitStandardPm) }),
    size:
      now === null
        ? null
        : {
            valuePm: now.valuePm,
            expandedPm: now.expandedPm,
            state: aimVerdict(aim)?.state ?? null,
            label: 'now',
          },
    expected: onDial?.expected ?? null,
    stopAt: turnToPm === aim.aimPm ? null : { valuePm: turnToPm },
  };
  // A cut is a new picture: it covers where the piece is now and where it has to come to.
  const known = now === null ? [] : [now.valuePm - now.expandedPm, now.valuePm + now.expandedPm];
  const spanPm = stripSpan(data, { sizesPm: [...known, turnToPm] });
  return (
    <FittedStrip name={`${piece.mark} ${feature.name.toLowerCase()}`} data={{ ...data, spanPm }} />
  );
}
