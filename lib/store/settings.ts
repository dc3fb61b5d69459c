import type { Setting } from '@/lib/schema/setting';
import { findThings } from './find-things';

/** What the shop and, where its id is known, one device have chosen; null where nothing has been. */
export async function settingsFor(
  deviceId: string | null,
): Promise<{ shop: Setting | null; device: Setting | null }> {
  const [shop, device] = await Promise.all([one('shop'), deviceId === null ? null : one(deviceId)]);
  return { shop, device };
}

async function one(id: string): Promise<Setting | null> {
  return (await findThings('setting', { id }))[0] ?? null;
}
