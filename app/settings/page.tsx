import type { Metadata } from 'next';
import { deviceId } from '../chosen';
import { SettingsSheet } from '../ui/settings/settings-sheet';
import { ShopFrame } from '../ui/shop/shop-frame';
import { findThings } from '@/lib/store/find-things';
import { settingsFor } from '@/lib/store/settings';

export const metadata: Metadata = { title: 'Settings' };

export default async function SettingsPage() {
  const [{ shop, device }, people] = await Promise.all([
    settingsFor(await deviceId()),
    findThings('person'),
  ]);
  return (
    <ShopFrame current="Settings">
      <SettingsSheet shop={shop} device={device} people={people} />
    </ShopFrame>
  );
}
