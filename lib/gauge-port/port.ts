import type { SerialFrame } from '@/lib/schema/serial-frames';

/** How the two ends of a line must be set alike. */
export type PortSettings = { baudRate: number; frame: SerialFrame };

/**
 * What can go wrong with a port. After the first four it can be read on, but what was being sent is spoilt.
 * `lost`: unplugged or switched off. `in use`: another page or program has it. `refused`: the machine would
 * not open it so.
 */
export type PortFault = 'parity' | 'frame' | 'break' | 'overrun' | 'lost' | 'in use' | 'refused';

export class PortError extends Error {
  constructor(readonly fault: PortFault) {
    super(fault);
    this.name = 'PortError';
  }
}

/** One serial port: the only thing the rest of this folder knows of the browser. */
export type GaugePort = {
  /** What it says it is, to know it again; the same for two adapters of one make. */
  make: string;
  /** Rejects with a PortError. */
  open(settings: PortSettings): Promise<void>;
  /** The next bytes; null once it was closed. Rejects with a PortError. */
  read(): Promise<Uint8Array | null>;
  close(): Promise<void>;
};

/** All the ports a person has let this page use. */
export type PortHouse = {
  /** Those chosen before and plugged in now; no press is needed. */
  remembered(): Promise<GaugePort[]>;
  /** Lets a person choose one; only while a press is fresh. Null where none was chosen. */
  choose(): Promise<GaugePort | null>;
  /** Told when a port chosen before is plugged in; returns what ends it. */
  onArrival(listener: () => void): () => void;
};
