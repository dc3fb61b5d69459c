'use client';

import type { Feature } from '@/lib/schema/feature';
import type { Picture } from '@/lib/schema/picture';
import styles from './drawing.module.css';

type Props = {
  picture: Picture;
  features: readonly Feature[];
  /** The feature whose balloon stands out: it is being set, or it is next. */
  live: string | null;
  /** Called with shares of width and height; null while no balloon is being set. */
  onPlace: ((x: number, y: number) => void) | null;
};

/** A picture of the drawing with a balloon at each place that was set. */
export function BalloonPicture({ picture, features, live, onPlace }: Props) {
  const placed = features.filter(
    (feature) => feature.pictureId === picture.id && feature.pictureX !== null,
  );
  return (
    <div className={styles.picture} data-setting={onPlace !== null}>
      {/* The file comes from this notebook and is shown as it is: no resizing service stands between. */}
      {/* oxlint-disable-next-line nextjs/no-img-element */}
      <img
        src={`/api/v1/pictures/${picture.id}/file`}
        alt={`Drawing: ${picture.name}`}
        width={picture.widthPx}
        height={picture.heightPx}
      />
      {onPlace !== null && (
        <button
          type="button"
          className={styles.place}
          aria-label="The place of this balloon"
          onClick={(event) => {
            const box = event.currentTarget.getBoundingClientRect();
            // A press of the keyboard has no place: it sets the balloon in the middle.
            const at = (client: number, from: number, size: number) =>
              event.detail === 0 ? 0.5 : Math.min(1, Math.max(0, (client - from) / size));
            onPlace(at(event.clientX, box.left, box.width), at(event.clientY, box.top, box.height));
          }}
        />
      )}
      {placed.map((feature) => (
        <span
          key={feature.id}
          className={styles.balloon}
          data-live={feature.id === live}
          style={{ left: `${feature.pictureX! * 100}%`, top: `${feature.pictureY! * 100}%` }}
        >
          {feature.balloon}
        </span>
      ))}
    </div>
  );
}
