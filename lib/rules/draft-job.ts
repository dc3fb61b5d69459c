import type { FeatureKind } from '@/lib/schema/feature';
import type { JobStart } from '@/lib/schema/new-job';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { readDrawn, type ReadDrawn } from './drawn-feature';
import { isExternal, isInternal } from './feature-sides';
import { fitName } from './fit-name';
import { readWanted, type FitSaid, type WantedFault } from './ways/read-wanted';

/** A job as it is being written down from a drawing; everything is text until it is kept. */
export type DraftJob = {
  name: string;
  drawing: string;
  revision: string;
  unit: LengthUnit;
  parts: DraftPart[];
  /** Between the first internal and the first external feature of two parts. */
  fit: FitSaid | null;
};

export type DraftPart = {
  key: string;
  name: string;
  quantity: string;
  material: string;
  prefix: string;
  features: DraftFeature[];
};

export type DraftFeature = {
  key: string;
  drawn: string;
  /** Null until the person says: then what the drawing most likely means. */
  kind: FeatureKind | null;
  name: string;
  /** Null until the person says: then where such a feature is usually read. */
  places: Places | null;
};

/** Where a feature is read: at one place, across two directions, or at three stations across two. */
export type Places = 'one' | 'across' | 'along';

export type DraftFault =
  | { at: 'name' | 'parts' }
  | { at: 'part name' | 'quantity' | 'prefix'; part: string }
  | { at: 'drawn'; feature: string; read: Exclude<ReadDrawn, { kind: 'feature' }> }
  | { at: 'fit'; wrong: WantedFault };

/** Names of stations: a bore is read from the top down, the rest from one end to the other. */
const stations = { internal: ['top', 'middle', 'bottom'], other: ['near', 'middle', 'far'] };

/**
 * The job a draft stands for, ready to be sent, or the first thing that has to be put right.
 *
 * Lines of features that were left empty are passed over, and so are parts without a name and without
 * features. `newId` makes the ids, so that the function stays pure.
 */
export function draftJob(
  draft: DraftJob,
  decimal: DecimalMark,
  newId: () => string,
): { kind: 'job'; start: JobStart } | { kind: 'fault'; fault: DraftFault } {
  const fault = (found: DraftFault) => ({ kind: 'fault' as const, fault: found });
  if (draft.name.trim() === '') return fault({ at: 'name' });
  const parts = draft.parts.filter((part) => part.name.trim() !== '' || hasFeatures(part));
  if (parts.length === 0) return fault({ at: 'parts' });

  const start: JobStart = {
    job: {
      id: newId(),
      name: draft.name.trim(),
      note: '',
      drawing: draft.drawing.trim(),
      revision: draft.revision.trim(),
      unit: draft.unit,
      finishedAt: null,
    },
    parts: [],
    features: [],
    fits: [],
    runs: [],
  };
  for (const [index, part] of parts.entries()) {
    const quantity = Number(part.quantity.trim());
    if (part.name.trim() === '') return fault({ at: 'part name', part: part.key });
    if (!Number.isInteger(quantity) || quantity < 1 || quantity > 2000) {
      return fault({ at: 'quantity', part: part.key });
    }
    const prefix = (part.prefix.trim() || likelyPrefix(part.name, start.parts)).slice(0, 6);
    if (!/^[\p{L}\d]*$/u.test(prefix)) return fault({ at: 'prefix', part: part.key });
    const partId = newId();
    const { name, material } = part;
    start.parts.push({
      id: partId,
      position: index + 1,
      name: name.trim(),
      material: material.trim(),
      prefix,
      quantity,
    });
    for (const feature of part.features) {
      if (feature.drawn.trim() === '') continue;
      const read = readDrawn(feature.drawn, { decimal, unit: draft.unit });
      if (read.kind !== 'feature') return fault({ at: 'drawn', feature: feature.key, read });
      const position = start.features.length + 1;
      const kind = feature.kind ?? read.likely;
      start.features.push({
        id: newId(),
        partId,
        position,
        balloon: String(position),
        name: feature.name.trim() || nameOfKind(kind),
        kind,
        asDrawn: feature.drawn.trim(),
        unit: read.unit,
        nominalPm: read.nominalPm,
        upperPm: read.upperPm,
        lowerPm: read.lowerPm,
        isoClass: read.isoClass,
        ...placesOf(kind, feature.places ?? usualPlaces(kind)),
        pictureId: null,
        pictureX: null,
        pictureY: null,
      });
    }
  }
  if (draft.fit === null) return { kind: 'job', start };
  const tied = tiedFeatures(start.features);
  if (tied === null) return { kind: 'job', start };
  const { nominalPm } = tied.internal;
  const wanted = readWanted(draft.fit, { nominalPm, decimal, unit: draft.unit });
  if (wanted.kind === 'wrong') return fault({ at: 'fit', wrong: wanted.wrong });
  const partOf = (id: string) => start.parts.find((part) => part.id === id)!.name;
  start.fits.push({
    id: newId(),
    internalFeatureId: tied.internal.id,
    externalFeatureId: tied.external.id,
    name: fitName(partOf(tied.external.partId), partOf(tied.internal.partId)),
    ...wanted.fields,
  });
  return { kind: 'job', start };
}

/** The first internal and the first external feature that belong to different parts; null without them. */
export function tiedFeatures<Row extends { kind: FeatureKind; partId: string }>(
  features: readonly Row[],
): { internal: Row; external: Row } | null {
  for (const internal of features.filter(({ kind }) => isInternal(kind))) {
    const external = features.find(
      ({ kind, partId }) => isExternal(kind) && partId !== internal.partId,
    );
    if (external !== undefined) return { internal, external };
  }
  return null;
}

/** A mark to begin with: the first letter of the part's name, a second one where that is taken. */
export function likelyPrefix(name: string, taken: readonly { prefix: string }[]): string {
  const letters = [...name.toUpperCase()].filter((letter) => /\p{L}/u.test(letter));
  const used = new Set(taken.map(({ prefix }) => prefix));
  for (let length = 1; length <= Math.min(4, letters.length); length += 1) {
    const prefix = letters.slice(0, length).join('');
    if (!used.has(prefix)) return prefix;
  }
  return '';
}

/** What a kind of feature is called when nobody gave it a name. */
export function nameOfKind(kind: FeatureKind): string {
  return kind.charAt(0).toUpperCase() + kind.slice(1);
}

/** Where such a feature is usually read. */
export function usualPlaces(kind: FeatureKind): Places {
  return kind === 'bore' || kind === 'outside' ? 'along' : 'one';
}

/** The station plan of such a choice of places. */
export function placesOf(
  kind: FeatureKind,
  places: Places,
): { stations: string[]; directions: string[] } {
  if (places === 'one') return { stations: ['middle'], directions: ['A'] };
  if (places === 'across') return { stations: ['middle'], directions: ['A', 'B'] };
  return {
    stations: isInternal(kind) ? stations.internal : stations.other,
    directions: ['A', 'B'],
  };
}

/** The choice of places a station plan stands for; a plan of its own counts as the fullest. */
export function placesFrom(plan: {
  stations: readonly string[];
  directions: readonly string[];
}): Places {
  if (plan.stations.length > 1) return 'along';
  return plan.directions.length > 1 ? 'across' : 'one';
}

function hasFeatures(part: DraftPart): boolean {
  return part.features.some((feature) => feature.drawn.trim() !== '');
}
