import { browserEnvironment } from './browser-environment';
import { followChanges, type Follow } from './live';

/** Follows the changes of one job in this page; the answer stops it. */
export function followJob(follow: Follow): () => void {
  return followChanges(browserEnvironment(), follow);
}
