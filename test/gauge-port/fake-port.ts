import {
  PortError,
  type GaugePort,
  type PortFault,
  type PortHouse,
  type PortSettings,
} from '@/lib/gauge-port/port';

/** A port whose other end is held by a test. */
export class FakePort implements GaugePort {
  opened: PortSettings[] = [];
  /** What opening it ends in. */
  refuses: PortFault | null = null;
  private queue: (Uint8Array | PortFault | null)[] = [];
  private wake: (() => void) | null = null;
  isOpen = false;

  constructor(readonly make = 'usb 1027:24577') {}

  async open(settings: PortSettings): Promise<void> {
    if (this.refuses !== null) throw new PortError(this.refuses);
    this.opened.push(settings);
    this.queue = [];
    this.isOpen = true;
  }

  async read(): Promise<Uint8Array | null> {
    while (this.queue.length === 0) {
      if (!this.isOpen) return null;
      await new Promise<void>((done) => (this.wake = done));
    }
    const next = this.queue.shift()!;
    if (typeof next === 'string') throw new PortError(next);
    return next;
  }

  async close(): Promise<void> {
    this.isOpen = false;
    this.wake?.();
  }

  send(text: string): void {
    this.put(Uint8Array.from(text, (one) => one.charCodeAt(0)));
  }

  fault(fault: PortFault): void {
    this.put(fault);
  }

  private put(what: Uint8Array | PortFault): void {
    this.queue.push(what);
    this.wake?.();
  }
}

/** The ports that are plugged in, as a test says. */
export class FakeHouse implements PortHouse {
  listeners = new Set<() => void>();

  constructor(public ports: FakePort[]) {}

  async remembered(): Promise<GaugePort[]> {
    return this.ports;
  }

  async choose(): Promise<GaugePort | null> {
    return this.ports[0] ?? null;
  }

  onArrival(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  plugIn(port: FakePort): void {
    this.ports = [...this.ports, port];
    for (const listener of this.listeners) listener();
  }
}
