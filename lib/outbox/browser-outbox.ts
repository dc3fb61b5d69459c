import { browserEnvironment } from './browser-environment';
import { createOutbox, type Outbox } from './outbox';

let ofThisTab: Outbox | null = null;

/** The one outbox of this tab, made and started at the first call. Call it in a page, not on the server. */
export function browserOutbox(): Outbox {
  ofThisTab ??= createOutbox(browserEnvironment());
  return ofThisTab;
}
