'use client';

import type { FitView } from '@/lib/rules/fit-view';
import { nothingToMake } from '@/lib/rules/nothing-to-make';
import { nothingToMakeWords } from '@/lib/text/nothing-to-make-words';
import { useJob } from '../job/job-provider';
import { LinkButton } from '../primitives/link-button';
import styles from './fits.module.css';

/** In the place of the target card: why nothing is to be made, and what to measure so that something is. */
export function NothingToMake({ fit }: { fit: FitView }) {
  const { view } = useJob();
  const found = nothingToMake(fit);
  if (found === null) return null;
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const measureId = toMeasure(found);
  const { title, says } = nothingToMakeWords(factsOf(found, markOf));
  const bench = `/jobs/${fit.fit.jobId}/bench`;
  return (
    <section className={styles.card}>
      <h2>{title}</h2>
      <p className="t-sentence">{says}</p>
      {measureId === null ? (
        <LinkButton href={bench}>To the bench</LinkButton>
      ) : (
        <LinkButton
          kind="main"
          href={`${bench}?${new URLSearchParams({ piece: measureId, feature: fit.internalFeature.id })}`}
        >
          Measure {markOf(measureId)}
        </LinkButton>
      )}
    </section>
  );
}

type Found = NonNullable<ReturnType<typeof nothingToMake>>;

function toMeasure(found: Found): string | null {
  switch (found.kind) {
    case 'measure first':
      return found.pieceId;
    case 'no partner':
      return found.measureId;
    case 'no size':
      return found.pieceIds[0]!;
    default:
      return null;
  }
}

function factsOf(
  found: Found,
  markOf: (id: string) => string,
): Parameters<typeof nothingToMakeWords>[0] {
  switch (found.kind) {
    case 'measure first':
      return { kind: found.kind, mark: markOf(found.pieceId) };
    case 'no partner': {
      const measure = found.measureId === null ? null : markOf(found.measureId);
      return { kind: found.kind, marks: found.pieceIds.map(markOf), measure };
    }
    case 'no size':
      return { kind: found.kind, marks: found.pieceIds.map(markOf) };
    default:
      return { kind: found.kind };
  }
}
