import { pictureBytesMax } from '@/lib/schema/picture';
import type { ThingKind } from '@/lib/schema/change';
import { keepNew, type Made } from './keep-new';
import { pictureHead } from './picture-head';
import { refused } from './refused';
import type { New } from './thing-types';
import type { Who } from './who';

/**
 * Makes a thing, with its line in the change log; a part's pieces are made with it.
 *
 * Safe to repeat: an id that is in the book with the same content is `known`, and its row is given as it
 * now is. The same id with another content is refused.
 *
 * @example
 * await makeThing('person', { id, name: 'Ruth' }, { deviceId, personId: null });
 * // { state: 'made', row: { id, name: 'Ruth', version: 1, createdAt: ..., struckAt: null } }
 */
export async function makeThing<Kind extends ThingKind>(
  kind: Kind,
  fresh: New<Kind>,
  who: Who,
): Promise<Made<Kind>> {
  if (!('base64' in fresh)) return keepNew(kind, { said: fresh }, who);
  const { base64, ...said } = fresh as New<'picture'>;
  const bytes = new Uint8Array(Buffer.from(base64, 'base64'));
  if (bytes.length > pictureBytesMax) return refused('picture-too-large', 'base64');
  const head = pictureHead(bytes);
  if (head === undefined) return refused('not-a-picture', 'base64');
  return keepNew(kind, { said, own: head, bytes }, who);
}
