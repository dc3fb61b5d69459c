'use client';

import { useState, type FormEvent } from 'react';
import type { Standing } from '@/lib/rules/standing';
import { Button } from '../primitives/button';
import { SelectField } from '../primitives/field';
import styles from './list.module.css';
import type { Bench } from './use-bench';
import { plainCorrection } from './use-fresh';

type Props = { bench: Bench; reading: Standing; personId: string | null; onDone: () => void };

/** Where a reading belongs: another piece, feature or place of the job. */
export function MoveForm({ bench, reading, personId, onDone }: Props) {
  const { view, fresh } = bench;
  const [pieceId, setPieceId] = useState(reading.pieceId);
  const [featureId, setFeatureId] = useState(reading.featureId);
  const [station, setStation] = useState(reading.station);
  const [direction, setDirection] = useState(reading.direction);
  const part = view.parts.find(({ pieces }) => pieces.some(({ id }) => id === pieceId));
  const features = part?.features ?? [];
  const feature = features.find(({ id }) => id === featureId) ?? features[0];
  const stations = feature?.stations ?? [];
  const directions = feature?.directions ?? [];
  const to = {
    toPieceId: pieceId,
    toFeatureId: feature?.id ?? reading.featureId,
    toStation: stations.includes(station) ? station : (stations[0] ?? ''),
    toDirection: directions.includes(direction) ? direction : (directions[0] ?? ''),
  };
  const isSame =
    to.toPieceId === reading.pieceId &&
    to.toFeatureId === reading.featureId &&
    to.toStation === reading.station &&
    to.toDirection === reading.direction;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isSame) return;
    fresh.correction({ ...plainCorrection, kind: 'move', readingId: reading.id, personId, ...to });
    onDone();
  };
  return (
    <form className={styles.form} onSubmit={submit}>
      <SelectField
        bench
        label="Piece"
        value={pieceId}
        onChange={setPieceId}
        options={view.parts.flatMap(({ part: { name }, pieces, features: own }) =>
          own.length === 0
            ? []
            : pieces.map(({ id, mark }) => ({
                value: id,
                label: `${mark}, ${name.toLowerCase()}`,
              })),
        )}
      />
      <SelectField
        bench
        label="Feature"
        value={to.toFeatureId}
        onChange={setFeatureId}
        options={features.map(({ id, balloon, name }) => ({
          value: id,
          label: `${balloon} ${name}`,
        }))}
      />
      {stations.length > 1 ? (
        <SelectField
          bench
          label="Station"
          value={to.toStation}
          onChange={setStation}
          options={plain(stations)}
        />
      ) : null}
      {directions.length > 1 ? (
        <SelectField
          bench
          label="Across"
          value={to.toDirection}
          onChange={setDirection}
          options={plain(directions)}
        />
      ) : null}
      <Button kind="main" bench type="submit" disabled={isSame}>
        Move it there
      </Button>
    </form>
  );
}

function plain(names: readonly string[]) {
  return names.map((name) => ({ value: name, label: name }));
}
