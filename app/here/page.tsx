import { HereSheet } from '@/app/ui/here/here-sheet';

/** What the device opens by itself when the notebook does not answer; the service worker keeps it. */
export default function HerePage() {
  return <HereSheet />;
}
