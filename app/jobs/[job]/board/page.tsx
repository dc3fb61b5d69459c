import type { Metadata } from 'next';
import { BoardSheet } from '@/app/ui/board/board-sheet';

export const metadata: Metadata = { title: 'Board' };

export default function BoardPage() {
  return <BoardSheet />;
}
