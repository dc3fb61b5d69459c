import type { Metadata } from 'next';
import { chosenHere } from '../chosen';
import { ShopFrame } from '../ui/shop/shop-frame';
import { StartSheet } from '../ui/start/start-sheet';
import { findThings } from '@/lib/store/find-things';

export const metadata: Metadata = { title: 'Start a job' };

export default async function StartPage() {
  const [{ decimal, unit }, materials, rules] = await Promise.all([
    chosenHere(),
    findThings('material'),
    findThings('fitRule'),
  ]);
  return (
    <ShopFrame current="Jobs">
      <StartSheet decimal={decimal} unit={unit} materials={materials} rules={rules} />
    </ShopFrame>
  );
}
