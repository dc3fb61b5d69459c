import type { Metadata } from 'next';
import { chosenHere } from '../chosen';
import { ShopFrame } from '../ui/shop/shop-frame';
import { TablesSheet } from '../ui/tables/tables-sheet';
import { findThings } from '@/lib/store/find-things';

export const metadata: Metadata = { title: 'Tables' };

export default async function TablesPage() {
  const [materials, rules, { unit, decimal }] = await Promise.all([
    findThings('material'),
    findThings('fitRule'),
    chosenHere(),
  ]);
  return (
    <ShopFrame current="Tables">
      <TablesSheet materials={materials} rules={rules} unit={unit ?? 'mm'} decimal={decimal} />
    </ShopFrame>
  );
}
