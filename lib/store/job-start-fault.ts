import type { JobStart } from '@/lib/schema/new-job';
import { fitFault } from './fit-fault';
import { limitsFault } from './limits-fault';
import { refused, type Refused } from './refused';

/** The most pieces one request makes. */
const piecesMax = 5000;

/**
 * What makes the start of a job nonsense in itself, or nothing: an id used twice, a feature of a part that
 * is not in the request, a fit of two bores.
 */
export function jobStartFault({ parts, features, fits, runs }: JobStart): Refused | undefined {
  const pieces = parts.reduce((sum, { quantity }) => sum + quantity, 0);
  if (pieces > piecesMax) return refused('too-many-pieces', 'parts');
  const partIds = new Set(parts.map(({ id }) => id));
  const byId = new Map(features.map((feature) => [feature.id, feature]));
  return (
    twice('parts', parts) ??
    twice('features', features) ??
    twice('fits', fits) ??
    twice('runs', runs) ??
    each('features', features, (feature) => {
      if (!partIds.has(feature.partId)) return refused('no-such-part', 'partId');
      if (feature.pictureId !== null) return refused('no-such-picture', 'pictureId');
      return limitsFault('feature', feature);
    }) ??
    each('fits', fits, (fit) => {
      const [internal, external] = [
        byId.get(fit.internalFeatureId),
        byId.get(fit.externalFeatureId),
      ];
      return fitFault(internal, external) ?? limitsFault('fit', fit);
    }) ??
    each('runs', runs, ({ featureId, alikeIds }) => {
      if (!byId.has(featureId)) return refused('no-such-feature', 'featureId');
      const isOther = (id: string) => byId.has(id) && id !== featureId;
      return alikeIds.every(isOther) ? undefined : refused('no-such-feature', 'alikeIds');
    })
  );
}

function twice(at: string, rows: readonly { id: string }[]): Refused | undefined {
  const i = rows.findIndex(({ id }, k) => rows.findIndex((row) => row.id === id) !== k);
  return i < 0 ? undefined : refused('id-twice', `${at}.${i}.id`);
}

function each<Row>(
  at: string,
  rows: readonly Row[],
  judge: (row: Row) => Refused | undefined,
): Refused | undefined {
  for (const [i, row] of rows.entries()) {
    const fault = judge(row);
    if (fault !== undefined) return { ...fault, at: `${at}.${i}.${fault.at}` };
  }
  return undefined;
}
