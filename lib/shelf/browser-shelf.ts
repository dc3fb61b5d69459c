import { createShelf, type Shelf } from './shelf';

let ofThisPage: Shelf | null = null;

/** The shelf of this browser. Call it in a page, not on the server. */
export function browserShelf(): Shelf {
  return (ofThisPage ??= createShelf({ nowMs: () => Date.now() }));
}
