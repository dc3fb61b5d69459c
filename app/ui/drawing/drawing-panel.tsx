'use client';

import { useState } from 'react';
import type { Picture } from '@/lib/schema/picture';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Panel } from '../primitives/panel';
import { AttachPicture } from './attach-picture';
import { BalloonPicture } from './balloon-picture';
import styles from './drawing.module.css';

/** The picture of the drawing with its balloons, that of what is next in blue. */
export function DrawingPanel() {
  const { view } = useJob();
  const pictures = view.sheet.pictures.filter((picture) => picture.struckAt === null);
  const picture = pictures.at(-1);
  if (picture === undefined) {
    return (
      <div className="not-on-paper">
        <Panel title="Drawing">
          <p className="t-sentence">No picture of the drawing yet.</p>
          <AttachPicture />
        </Panel>
      </div>
    );
  }
  return (
    <Panel title="Drawing">
      <Ballooned key={picture.id} picture={picture} />
    </Panel>
  );
}

/** Balloons are set by choosing one and tapping its place: seldom done, and closed once some are set. */
function Ballooned({ picture }: { picture: Picture }) {
  const { view } = useJob();
  const { change, trouble } = useThings();
  const [setting, setSetting] = useState<string | null>(null);
  const features = view.parts.flatMap((part) => part.features);
  const [isOpen] = useState(() => features.every(({ pictureId }) => pictureId !== picture.id));
  const chosen = features.find((feature) => feature.id === setting);
  return (
    <>
      <BalloonPicture
        picture={picture}
        features={features}
        live={setting ?? view.next?.featureId ?? null}
        onPlace={
          chosen === undefined
            ? null
            : (x, y) => {
                setSetting(null);
                void change('feature', chosen.id, {
                  version: chosen.version,
                  pictureId: picture.id,
                  pictureX: x,
                  pictureY: y,
                });
              }
        }
      />
      <details className={`${styles.setting} not-on-paper`} open={isOpen}>
        <summary>Set the balloons</summary>
        <p className={styles.says} role="status">
          {chosen === undefined
            ? 'Choose a balloon, then tap its place on the picture.'
            : `Tap the place of balloon ${chosen.balloon}, ${chosen.name.toLowerCase()}.`}
        </p>
        <div className={styles.balloons} role="group" aria-label="Balloons">
          {features.map((feature) => (
            <button
              key={feature.id}
              type="button"
              aria-pressed={feature.id === setting}
              onClick={() => setSetting(feature.id === setting ? null : feature.id)}
            >
              {feature.balloon}
              <span className="unseen"> {feature.name}</span>
            </button>
          ))}
        </div>
        {trouble !== null && (
          <p role="alert" className={styles.trouble}>
            {trouble}
          </p>
        )}
        <div className={styles.buttons}>
          <AttachPicture />
          <Button
            onClick={() =>
              void change('picture', picture.id, { version: picture.version, struck: true })
            }
          >
            Take it off
          </Button>
        </div>
      </details>
    </>
  );
}
