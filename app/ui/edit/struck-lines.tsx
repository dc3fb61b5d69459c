'use client';

import { drawnOutWords } from '@/lib/text/struck-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import styles from './edit.module.css';

type Struck = { id: string; version: number; struckAt: string | null };
type Props<Thing extends Struck> = {
  kind: 'part' | 'feature';
  things: readonly Thing[];
  titleOf: (thing: Thing) => string;
};

/** Lines of the job as drawn that are struck out, each with a button that puts it back. */
function StruckLines<Thing extends Struck>({ kind, things, titleOf }: Props<Thing>) {
  const { change, trouble, busy } = useThings();
  const struck = things.filter(({ struckAt }) => struckAt !== null);
  if (struck.length === 0) return null;
  return (
    <>
      {struck.map((thing) => (
        <div key={thing.id} className={`${styles.entry} ${styles.line}`}>
          <span className={`${styles.title} struck`}>{titleOf(thing)}</span>
          <span className={styles.remark}>{drawnOutWords(kind)}</span>
          <Button
            disabled={busy}
            onClick={() => void change(kind, thing.id, { version: thing.version, struck: false })}
          >
            Put back<span className="unseen"> {titleOf(thing)}</span>
          </Button>
        </div>
      ))}
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </>
  );
}

/** The features of a part that are struck out. */
export function StruckFeatures({ partId }: { partId: string }) {
  const { view } = useJob();
  const features = view.sheet.features.filter((feature) => feature.partId === partId);
  return (
    <StruckLines
      kind="feature"
      things={features}
      titleOf={({ balloon, name }) => `${balloon} ${name}`}
    />
  );
}

/** The parts of the job that are struck out. */
export function StruckParts() {
  const { view } = useJob();
  return <StruckLines kind="part" things={view.sheet.parts} titleOf={({ name }) => name} />;
}
