import { cookies } from 'next/headers';
import { settingsFor } from '@/lib/store/settings';
import type { Chosen } from './ui/job/job-provider';

/** The cookie in which the browser tells the server which device it is; made by lib/outbox/device-id. */
const deviceCookie = 'fw-device';

/** This device's id as the browser tells it; null before its first visit is over. */
export async function deviceId(): Promise<string | null> {
  const value = (await cookies()).get(deviceCookie)?.value;
  return value !== undefined && /^[0-9a-f-]{36}$/.test(value) ? value : null;
}

/** What this device has chosen, else the shop, else what is usual. */
export async function chosenHere(): Promise<
  Omit<Chosen, 'unit'> & { unit: Chosen['unit'] | null; theme: 'light' | 'dark' | 'glare' | null }
> {
  const id = await deviceId();
  const { shop, device } = await settingsFor(id);
  return {
    unit: device?.unitShown ?? shop?.unitShown ?? null,
    decimal: device?.decimal ?? shop?.decimal ?? '.',
    theme: device?.theme ?? shop?.theme ?? null,
    hand: device?.hand ?? shop?.hand ?? 'right',
    personId: device?.personId ?? null,
  };
}
