import type { Metadata } from 'next';
import { EditSheet } from '@/app/ui/edit/edit-sheet';

export const metadata: Metadata = { title: 'The job as drawn' };

export default function EditPage() {
  return <EditSheet />;
}
