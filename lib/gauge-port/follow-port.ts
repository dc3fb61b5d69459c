import { messageReader, type MessageCut, type ReadMessage } from './message-reader';
import {
  PortError,
  type GaugePort,
  type PortFault,
  type PortHouse,
  type PortSettings,
} from './port';

/**
 * Where a gauge's line stands. `not here`: its port was chosen before and is not plugged in, or was never
 * chosen. `alike`: two of the same make are plugged in, and nobody can say which is which.
 */
export type PortState = 'opening' | 'open' | 'lost' | 'not here' | 'alike' | 'in use' | 'refused';

/** Bytes that come this soon after opening may be the end of a message that began before. */
const quietMs = 100;

type Follow = {
  house: PortHouse;
  /** The make of the port, as it was remembered; a port itself where it has just been chosen. */
  port: string | GaugePort;
  settings: PortSettings;
  cut: MessageCut;
  /** How long without a byte ends a message where `cut` is a pause. */
  pauseMs: number;
  onMessage: (text: string) => void;
  /** The bytes themselves, for a gauge of which nobody knows yet how its messages end. */
  onBytes?: (bytes: Uint8Array) => void;
  /** Something on the line was not readable. It is not a reading, and the person must send it again. */
  onSpoilt: (fault: PortFault | 'characters') => void;
  onState: (state: PortState) => void;
};

/**
 * Opens the port of a gauge and tells every message that comes, until it is stopped. A port that was unplugged
 * is opened again when it is back; nothing that was being sent meanwhile is made up.
 */
export function followPort(follow: Follow): { stop: () => Promise<void> } {
  const { house, settings, cut, pauseMs, onMessage, onSpoilt, onState } = follow;
  let isStopped = false;
  let current: GaugePort | null = null;
  let isBusy = false;
  let hasArrived = false;
  const endArrivals = house.onArrival(() => void start());
  const running = start(typeof follow.port === 'string' ? null : follow.port);
  return {
    async stop() {
      isStopped = true;
      endArrivals();
      await current?.close();
      await running;
    },
  };

  /** One at a time; a port that arrives while another is open is looked for when that one is lost. */
  async function start(chosen: GaugePort | null = null): Promise<void> {
    hasArrived = true;
    if (isBusy) return;
    isBusy = true;
    let first = chosen;
    while (hasArrived && !isStopped) {
      hasArrived = false;
      await run(first);
      first = null;
    }
    isBusy = false;
  }

  async function run(chosen: GaugePort | null): Promise<void> {
    const make = typeof follow.port === 'string' ? follow.port : follow.port.make;
    const like = chosen === null ? (await house.remembered()).filter((port) => port.make === make) : [chosen]; // prettier-ignore
    if (isStopped) return;
    if (like.length !== 1) return onState(like.length === 0 ? 'not here' : 'alike');
    const port = like[0]!;
    onState('opening');
    try {
      await port.open(settings);
    } catch (error) {
      const fault = error instanceof PortError ? error.fault : 'refused';
      return onState(fault === 'in use' ? 'in use' : 'refused');
    }
    current = port;
    if (isStopped) return port.close();
    onState('open');
    await readOn(port);
    await port.close();
    current = null;
    if (!isStopped) onState('lost');
  }

  async function readOn(port: GaugePort): Promise<void> {
    const openedMs = performance.now();
    let reader: ReturnType<typeof messageReader> | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    for (;;) {
      try {
        const bytes = await port.read();
        clearTimeout(timer);
        if (bytes === null || isStopped) return;
        follow.onBytes?.(bytes);
        const one = (reader ??= messageReader(cut, performance.now() - openedMs < quietMs));
        tell(one.push(bytes));
        if (cut === 'pause') timer = setTimeout(() => tell(one.pause()), pauseMs);
      } catch (error) {
        clearTimeout(timer);
        const fault = error instanceof PortError ? error.fault : 'lost';
        if (fault !== 'parity' && fault !== 'frame' && fault !== 'break' && fault !== 'overrun') return; // prettier-ignore
        reader ??= messageReader(cut);
        reader.spoil();
        const one = reader;
        if (cut === 'pause') timer = setTimeout(() => one.pause(), pauseMs);
        onSpoilt(fault);
      }
    }
  }

  function tell(messages: readonly ReadMessage[]): void {
    for (const message of messages) {
      if (isStopped) return;
      if (message.kind === 'message') onMessage(message.text);
      else onSpoilt('characters');
    }
  }
}
