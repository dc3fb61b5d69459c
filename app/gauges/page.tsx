import type { Metadata } from 'next';
import { chosenHere } from '../chosen';
import { GaugeRegister } from '../ui/gauges/gauge-register';
import { ShopFrame } from '../ui/shop/shop-frame';
import { findThings } from '@/lib/store/find-things';
import { gaugeUsage } from '@/lib/store/gauge-usage';

export const metadata: Metadata = { title: 'Gauges' };

type Props = { searchParams: Promise<{ teach?: string | string[] }> };

export default async function GaugesPage({ searchParams }: Props) {
  const [gauges, usage, { decimal }, { teach }] = await Promise.all([
    findThings('gauge'),
    gaugeUsage(),
    chosenHere(),
    searchParams,
  ]);
  return (
    <ShopFrame current="Gauges">
      <GaugeRegister
        gauges={gauges}
        usage={usage}
        decimal={decimal}
        teach={typeof teach === 'string' ? teach : null}
      />
    </ShopFrame>
  );
}
