'use client';

import { fitLimitsWords } from '@/lib/text/fit-words';
import { shownSize } from '@/lib/text/shown-size';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { Balloon } from '../primitives/balloon';
import styles from './board.module.css';

type Props = { feature: Feature; pieces: Piece[]; picked: boolean };

/** Balloon, name, how well it is known, and what the drawing or the fit asks for. */
export function FeatureHead({ feature, pieces, picked }: Props) {
  const { view, chosen } = useJob();
  const cells = pieces.map((piece) => view.cell(piece.id, feature.id));
  const sized = cells.filter((cell) => cell.size !== null);
  const typical = [...sized].sort((a, b) => a.size!.expandedPm - b.size!.expandedPm)[
    Math.floor(sized.length / 2)
  ];
  const known =
    typical === undefined
      ? ''
      : `, known to ${shownSize(typical.size!, resolutionOf(view, typical, feature), chosen).plusMinus}`;
  const fit = view.fits.find((candidate) => candidate.externalFeature.id === feature.id);
  const open = feature.upperPm === null && feature.lowerPm === null;
  const partner = view.parts.find(
    ({ part }) => fit !== undefined && part.id === fit.internalFeature.partId,
  );
  const asked =
    open && fit !== undefined && partner !== undefined
      ? fitLimitsWords(partner.part.name, fit.fit, chosen)
      : feature.asDrawn;
  return (
    <th scope="col" className={styles.feature} data-picked={picked}>
      <span className={styles.featureHead}>
        {feature.balloon !== '' && <Balloon>{feature.balloon}</Balloon>}
        <span>
          {feature.name}
          {known}
          <span className={styles.remark}>{asked}</span>
        </span>
      </span>
    </th>
  );
}
