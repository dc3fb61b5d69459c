import type { Metadata } from 'next';
import { chosenHere } from '../chosen';
import { ShopFrame } from '../ui/shop/shop-frame';
import { StartSheet } from '../ui/start/start-sheet';

export const metadata: Metadata = { title: 'Start a job' };

export default async function StartPage() {
  const { decimal, unit } = await chosenHere();
  return (
    <ShopFrame current="Jobs">
      <StartSheet decimal={decimal} unit={unit} />
    </ShopFrame>
  );
}
