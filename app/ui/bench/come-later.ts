import { lazy, type ComponentType, type LazyExoticComponent } from 'react';

const againMs = 2000;

/**
 * A part of the page that comes in a script of its own. It never fails to come: it is asked for until it does,
 * since the network may be back any moment. Once it is there it is drawn like any other part, with no moment
 * between.
 *
 * @returns the part, to be stood in a `Suspense`; and `fetchIt`, which brings it before it is needed
 */
export function comeLater<Props extends object>(
  bring: () => Promise<ComponentType<Props>>,
): { Part: LazyExoticComponent<ComponentType<Props>>; fetchIt: () => Promise<unknown> } {
  let found: ComponentType<Props> | null = null;
  const fetchIt = async () => {
    while (found === null) {
      try {
        found = await bring();
      } catch {
        await new Promise((done) => setTimeout(done, againMs));
      }
    }
    return { default: found };
  };
  const Part = lazy(() => (found === null ? fetchIt() : atOnce({ default: found })));
  return { Part, fetchIt };
}

/** React waits for a promise even where it is kept already; for this it does not. */
function atOnce<T>(value: T): Promise<T> {
  // oxlint-disable-next-line unicorn/no-thenable -- nobody but React's lazy gets it
  return { then: (done: (value: T) => void) => done(value) } as unknown as Promise<T>;
}
