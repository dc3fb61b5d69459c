'use client';

import { useState } from 'react';
import {
  nameOfKind,
  placesOf,
  placesFrom,
  usualPlaces,
  type DraftFeature,
} from '@/lib/rules/draft-job';
import { readDrawn } from '@/lib/rules/drawn-feature';
import type { Feature } from '@/lib/schema/feature';
import type { Part } from '@/lib/schema/part';
import { uuidv7 } from '@/lib/outbox/ids';
import { FeatureFields } from '../start/feature-fields';
import { emptyFeature } from '../start/empty-part';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Field } from '../primitives/field';
import { KeptForm } from './kept-form';

type Props = { part: Part; feature: Feature | null; onDone: () => void };

/** One feature as the drawing gives it. What was read of it stays, whatever the drawing turns out to say. */
export function FeatureForm({ part, feature, onDone }: Props) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const [draft, setDraft] = useState<DraftFeature>(() =>
    feature === null
      ? emptyFeature(uuidv7)
      : {
          key: feature.id,
          drawn: feature.asDrawn,
          kind: feature.kind,
          name: feature.name,
          places: placesFrom(feature),
        },
  );
  const numbers = view.sheet.features.map(({ balloon }) => Number(balloon) || 0);
  const [balloon, setBalloon] = useState(feature?.balloon ?? String(Math.max(0, ...numbers) + 1));
  const [tried, setTried] = useState(false);
  const { unit } = view.sheet.job;
  const read = readDrawn(draft.drawn, { decimal: chosen.decimal, unit });
  return (
    <KeptForm
      busy={busy}
      trouble={trouble}
      onKeep={() => void keep()}
      onStrike={feature === null ? undefined : () => void strike(feature)}
    >
      <FeatureFields
        feature={draft}
        unit={unit}
        decimal={chosen.decimal}
        fault={tried && read.kind !== 'feature' ? { at: 'drawn', feature: draft.key, read } : null}
        onChange={(over) => setDraft((old) => ({ ...old, ...over }))}
      />
      <Field
        label="Balloon"
        value={balloon}
        maxLength={6}
        onChange={(event) => setBalloon(event.target.value)}
      />
    </KeptForm>
  );

  async function keep() {
    setTried(true);
    // A size the drawing never gave in figures, such as "to its liner", stays as it was written.
    const same = feature !== null && draft.drawn === feature.asDrawn;
    if (!same && read.kind !== 'feature') return;
    const kind = draft.kind ?? (read.kind === 'feature' ? read.likely : 'bore');
    const size =
      same || read.kind !== 'feature'
        ? {}
        : {
            asDrawn: draft.drawn.trim(),
            unit: read.unit,
            nominalPm: read.nominalPm,
            upperPm: read.upperPm,
            lowerPm: read.lowerPm,
            isoClass: read.isoClass,
          };
    const plan = placesOf(kind, draft.places ?? usualPlaces(kind));
    const places = feature !== null && draft.places === placesFrom(feature) ? {} : plan;
    const body = { ...size, ...places, kind, name: draft.name.trim() || nameOfKind(kind), balloon };
    const done =
      feature === null
        ? await make('feature', {
            id: uuidv7(),
            jobId: part.jobId,
            partId: part.id,
            position: Math.max(0, ...view.sheet.features.map(({ position }) => position)) + 1,
            pictureId: null,
            pictureX: null,
            pictureY: null,
            ...plan,
            ...body,
          })
        : await change('feature', feature.id, { version: feature.version, ...body });
    if (done) onDone();
  }

  async function strike({ id, version }: Feature) {
    if (await change('feature', id, { version, struck: true })) onDone();
  }
}
