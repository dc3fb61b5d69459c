import type { Metadata } from 'next';
import { chosenHere } from '../chosen';
import { GaugeRegister } from '../ui/gauges/gauge-register';
import { ShopFrame } from '../ui/shop/shop-frame';
import { findThings } from '@/lib/store/find-things';
import { gaugeUsage } from '@/lib/store/gauge-usage';

export const metadata: Metadata = { title: 'Gauges' };

export default async function GaugesPage() {
  const [gauges, usage, { decimal }] = await Promise.all([
    findThings('gauge'),
    gaugeUsage(),
    chosenHere(),
  ]);
  return (
    <ShopFrame current="Gauges">
      <GaugeRegister gauges={gauges} usage={usage} decimal={decimal} />
    </ShopFrame>
  );
}
