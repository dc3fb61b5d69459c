import type { Change } from '@/lib/schema/change';
import { backOffMs } from './back-off';
import type { Environment, EventStream } from './environment';

export type Follow = {
  jobId: string;
  /** The change-log number the sheet is true at. */
  after: number;
  /** Given every later change of the job in rising order, each once. */
  onChange: (change: Change) => void;
  /** True once the server has been heard; false as soon as it may have been missed. */
  onState?: (live: boolean) => void;
};

/** Longer than the server is ever silent: it sends a beat every twenty seconds. */
const silenceMs = 40_000;

/**
 * Follows the changes of one job as they happen; the answer stops it.
 *
 * After a cut, a silence, a sleep or a change of network it connects anew and asks for what came after the last
 * change it has given out. A hidden page lets go of its connection (a browser has six to one server) and catches
 * up when it is seen again. There is nothing behind it: while it cannot connect, `onState` says so.
 *
 * Takes events `message` and `change` with a Change as JSON, and `beat`.
 */
export function followChanges(
  env: Pick<Environment, 'openStream' | 'after' | 'onPage' | 'random'>,
  { jobId, after, onChange, onState }: Follow,
): () => void {
  let lastSeq = after;
  let stream: EventStream | null = null;
  let callOff: (() => void) | undefined;
  let failures = 0;
  let live = false;
  let hidden = false;

  const setLive = (next: boolean) => {
    if (next === live) return;
    live = next;
    onState?.(next);
  };

  const close = () => {
    callOff?.();
    stream?.close();
    stream = null;
  };

  const open = () => {
    close();
    const query = new URLSearchParams({ job: jobId, after: String(lastSeq) });
    const opened = env.openStream(`/api/v1/live?${query}`);
    stream = opened;
    const waitForWord = () => {
      callOff?.();
      callOff = env.after(silenceMs, () => {
        setLive(false);
        open();
      });
    };
    const heard = () => {
      failures = 0;
      waitForWord();
      setLive(true);
    };
    const broken = () => {
      close();
      setLive(false);
      failures += 1;
      callOff = env.after(backOffMs(failures, env.random), open);
    };
    const take = (event: { data?: unknown }) => {
      const change = changeOf(event.data);
      if (change === null) return broken();
      heard();
      if (change.seq <= lastSeq) return;
      lastSeq = change.seq;
      onChange(change);
    };
    const whileOpen = (hear: (event: { data?: unknown }) => void) => (event: { data?: unknown }) =>
      stream === opened ? hear(event) : undefined;
    opened.addEventListener('message', whileOpen(take));
    opened.addEventListener('change', whileOpen(take));
    opened.addEventListener('beat', whileOpen(heard));
    opened.addEventListener('error', whileOpen(broken));
    waitForWord();
  };

  const callOffPage = env.onPage((event) => {
    if (event !== 'online') hidden = event === 'hidden';
    if (!hidden) return open();
    close();
    setLive(false);
  });
  open();

  return () => {
    callOffPage();
    close();
  };
}

function changeOf(data: unknown): Change | null {
  try {
    const change = JSON.parse(String(data)) as Change | null;
    return Number.isSafeInteger(change?.seq) ? change : null;
  } catch {
    return null;
  }
}
