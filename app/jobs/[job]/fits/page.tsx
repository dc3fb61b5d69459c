import type { Metadata } from 'next';
import { FitsSheet } from '@/app/ui/fits/fits-sheet';

export const metadata: Metadata = { title: 'Fits' };

export default function FitsPage() {
  return <FitsSheet />;
}
