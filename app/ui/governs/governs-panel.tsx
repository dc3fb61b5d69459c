'use client';

import { useMemo, useState } from 'react';
import type { Fit } from '@/lib/schema/fit';
import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import type { JobView } from '@/lib/rules/job-view';
import { shapeEffect, type ShapeEffect } from '@/lib/rules/shape-effect';
import {
  governsChoiceWords,
  governsWords,
  noShapeWords,
  shapeEffectWords,
  tooFewPlacesWords,
} from '@/lib/text/shape-effect-words';
import { lookAtShapesWords, noShapesWords } from '@/lib/text/fits-sheet-words';
import { shownSize } from '@/lib/text/shown-size';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Panel } from '../primitives/panel';
import styles from './governs.module.css';

/** Past this many pieces their shapes are looked at when a person asks for it. */
const atOnce = 40;

/** Which reading of each piece governs the fit, its shape in words, and what that does to the clearance. */
export function GovernsPanel({ fit }: { fit: FitView }) {
  const { view } = useJob();
  const { change, trouble, busy } = useThings();
  const [asked, setAsked] = useState(false);
  const count = fit.internals.length + fit.externals.length;
  const isShown = asked || count <= atOnce;
  const effects = useMemo(() => (isShown ? effectsOf(fit, view) : []), [isShown, fit, view]);
  const told = effects.filter(({ effect }) => isTold(effect));
  const untold = effects.filter(({ effect }) => !isTold(effect));
  const marksOf = (isReadEnough: boolean) =>
    untold.flatMap(({ piece, effect }) =>
      effect.isReadEnough === isReadEnough ? [piece.piece.mark] : [],
    );
  const [plain, tooFew] = [marksOf(true), marksOf(false)];
  return (
    <div className={styles.panel}>
      <Panel title="Which reading governs">
        <div className={styles.columns}>
          <div className={styles.choice}>
            <Choice
              label="What governs this fit"
              disabled={busy}
              value={fit.fit.governs}
              onChange={(governs: Fit['governs']) =>
                void change('fit', fit.fit.id, { version: fit.fit.version, governs })
              }
              options={[
                { value: 'extreme', label: 'Smallest bore, largest shaft' },
                { value: 'mean', label: 'Mean sizes' },
              ]}
            />
            <p className={styles.remark}>{governsChoiceWords(fit.fit.governs)}</p>
            {trouble !== null && (
              <p role="alert" className={styles.trouble}>
                {trouble}
              </p>
            )}
          </div>
          <div>
            {!isShown && <Button onClick={() => setAsked(true)}>{lookAtShapesWords(count)}</Button>}
            {told.length > 0 && (
              <ul className={styles.pieces} aria-label="Shapes">
                {told.map(({ piece, effect }) => (
                  <PieceShape key={piece.piece.id} fit={fit} piece={piece} effect={effect} />
                ))}
              </ul>
            )}
            {plain.length > 0 && <p className={styles.remark}>{noShapeWords(plain)}</p>}
            {tooFew.length > 0 && <p className={styles.remark}>{tooFewPlacesWords(tooFew)}</p>}
            {isShown && effects.length === 0 && <p className={styles.remark}>{noShapesWords}</p>}
          </div>
        </div>
      </Panel>
    </div>
  );
}

function effectsOf(fit: FitView, view: JobView) {
  return (['internal', 'external'] as const).flatMap((side) => {
    const feature = side === 'internal' ? fit.internalFeature : fit.externalFeature;
    return (side === 'internal' ? fit.internals : fit.externals).flatMap((piece) => {
      const cell = view.cell(piece.piece.id, feature.id);
      const effect = shapeEffect(fit, side, piece, cell, view.cells.gauges);
      return effect === null ? [] : [{ piece, effect }];
    });
  });
}

function PieceShape(props: { fit: FitView; piece: FitPiece; effect: ShapeEffect }) {
  const { fit, piece, effect } = props;
  const { view, chosen } = useJob();
  const feature = effect.side === 'internal' ? fit.internalFeature : fit.externalFeature;
  const cell = view.cell(piece.piece.id, feature.id);
  const resolutionPm = resolutionOf(view, cell, feature);
  const partner = view.sheet.pieces.find(({ id }) => id === effect.partnerId)?.mark ?? '';
  const around = { ...feature, resolutionPm, partner };
  const size = shownSize(piece.size!, resolutionPm, chosen);
  return (
    <li>
      <p className={styles.mark}>
        {piece.piece.mark} {size.value}
      </p>
      <p className={styles.place}>{governsWords(effect.governs, feature)}</p>
      <p className={styles.sentence}>{shapeEffectWords(effect, around, chosen).join(' ')}</p>
    </li>
  );
}

function isTold({ shapes, widest, tightest }: ShapeEffect): boolean {
  return shapes.length > 0 || widest !== null || tightest !== null;
}
