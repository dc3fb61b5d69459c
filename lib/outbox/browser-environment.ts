import type { Channel, Environment, Keepsake, PageEvent } from './environment';
import { uuidv7 } from './ids';

const cookieSeconds = 400 * 24 * 3600;

let ofThisPage: Environment | null = null;

/** The browser as the outbox sees it, one for the whole page. Call it in a page, not on the server. */
export function browserEnvironment(): Environment {
  return (ofThisPage ??= {
    indexedDB: globalThis.indexedDB,
    fetch: (url, init) => fetch(url, init),
    nowMs: () => Date.now(),
    offsetMin: (atMs) => -new Date(atMs).getTimezoneOffset(),
    random: () => Math.random(),
    newId: uuidv7,
    after(delayMs, run) {
      const timer = setTimeout(run, delayMs);
      return () => clearTimeout(timer);
    },
    // Missing on a page served over plain http.
    locks: (navigator as Partial<Navigator>).locks ?? null,
    channel: typeof BroadcastChannel === 'undefined' ? null : tabChannel(),
    keepsakes: [inLocalStorage, inCookie],
    onPage,
    openStream: (url) => new EventSource(url),
    persist() {
      void (navigator as Partial<Navigator>).storage?.persist?.().catch(() => false);
    },
  });
}

function tabChannel(): Channel {
  const channel = new BroadcastChannel('fitwright-outbox');
  return {
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has one origin
    post: (message) => channel.postMessage(message),
    listen(hear) {
      channel.addEventListener('message', (event) => hear(event.data));
    },
    close: () => channel.close(),
  };
}

const inLocalStorage: Keepsake = {
  read(name) {
    try {
      return localStorage.getItem(name);
    } catch {
      return null;
    }
  },
  write(name, value) {
    try {
      localStorage.setItem(name, value);
    } catch {
      // Full or forbidden; the other places remember.
    }
  },
};

const inCookie: Keepsake = {
  read(name) {
    const pairs = document.cookie.split('; ').map((pair) => pair.split('='));
    return pairs.find(([key]) => key === name)?.[1] ?? null;
  },
  write(name, value) {
    const secure = location.protocol === 'https:' ? '; Secure' : '';
    document.cookie = `${name}=${value}; Path=/; Max-Age=${cookieSeconds}; SameSite=Lax${secure}`;
  },
};

function onPage(hear: (event: PageEvent) => void): () => void {
  const listening = new AbortController();
  const { signal } = listening;
  const seen = () => hear(document.visibilityState === 'visible' ? 'visible' : 'hidden');
  document.addEventListener('visibilitychange', seen, { signal });
  // Back from the page cache, where neither timers nor connections lived on.
  addEventListener('pageshow', (event) => event.persisted && seen(), { signal });
  addEventListener('online', () => hear('online'), { signal });
  return () => listening.abort();
}
