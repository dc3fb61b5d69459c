import {
  PortError,
  type GaugePort,
  type PortFault,
  type PortHouse,
  type PortSettings,
} from './port';

/** As much of the browser's serial interface as is used here; see wicg.github.io/serial. */
export type WebSerial = {
  getPorts(): Promise<WebSerialPort[]>;
  requestPort(): Promise<WebSerialPort>;
  addEventListener(type: 'connect', listener: () => void): void;
  removeEventListener(type: 'connect', listener: () => void): void;
};
export type WebSerialPort = {
  getInfo(): { usbVendorId?: number; usbProductId?: number; bluetoothServiceClassId?: unknown };
  open(options: {
    baudRate: number;
    dataBits: 7 | 8;
    parity: 'none' | 'even' | 'odd';
    stopBits: 1 | 2;
  }): Promise<void>;
  readonly readable: ReadableStream<Uint8Array> | null;
  close(): Promise<void>;
};

/** The ports of a browser that has a serial interface. */
export function webSerialHouse(serial: WebSerial): PortHouse {
  // One of ours for each of the browser's, so that a port that is open is not opened twice.
  const known = new WeakMap<WebSerialPort, GaugePort>();
  const ours = (port: WebSerialPort): GaugePort => {
    const one = known.get(port) ?? webSerialPort(port);
    known.set(port, one);
    return one;
  };
  return {
    async remembered() {
      return (await serial.getPorts()).map(ours);
    },
    async choose() {
      try {
        return ours(await serial.requestPort());
      } catch (error) {
        // Closing the browser's list without a choice is told as this one.
        if (nameOf(error) === 'NotFoundError') return null;
        throw new PortError('refused');
      }
    },
    onArrival(listener) {
      serial.addEventListener('connect', listener);
      return () => serial.removeEventListener('connect', listener);
    },
  };
}

function webSerialPort(port: WebSerialPort): GaugePort {
  let reader: ReadableStreamDefaultReader<Uint8Array> | null = null;
  let isClosed = true;
  let closing: Promise<void> = Promise.resolve();
  return {
    make: makeOf(port.getInfo()),
    async open(settings) {
      await closing;
      try {
        await port.open(optionsOf(settings));
      } catch (error) {
        const inUse = nameOf(error) === 'InvalidStateError' || nameOf(error) === 'NetworkError';
        throw new PortError(inUse ? 'in use' : 'refused');
      }
      isClosed = false;
    },
    async read() {
      if (isClosed) return null;
      // After a fault that is not the end the browser gives the port another stream.
      if (reader === null) {
        if (port.readable === null) throw new PortError('lost');
        reader = port.readable.getReader();
      }
      try {
        const { value, done } = await reader.read();
        if (!done) return value;
      } catch (error) {
        release();
        throw new PortError(faults[nameOf(error)] ?? 'lost');
      }
      release();
      if (isClosed) return null;
      throw new PortError('lost');
    },
    async close() {
      if (isClosed) return;
      isClosed = true;
      closing = close();
      await closing;
    },
  };

  async function close(): Promise<void> {
    await reader?.cancel().catch(() => undefined);
    release();
    await port.close().catch(() => undefined);
  }

  function release(): void {
    try {
      reader?.releaseLock();
    } catch {
      // A read is still waiting; it ends with the stream.
    }
    reader = null;
  }
}

const faults: Record<string, PortFault> = {
  ParityError: 'parity',
  FramingError: 'frame',
  BreakError: 'break',
  BufferOverrunError: 'overrun',
};

function optionsOf({ baudRate, frame }: PortSettings): Parameters<WebSerialPort['open']>[0] {
  const [dataBits, parity, stopBits] = frame;
  return {
    baudRate,
    dataBits: dataBits === '7' ? 7 : 8,
    parity: parity === 'E' ? 'even' : parity === 'O' ? 'odd' : 'none',
    stopBits: stopBits === '2' ? 2 : 1,
  };
}

function makeOf(info: ReturnType<WebSerialPort['getInfo']>): string {
  const { usbVendorId, usbProductId, bluetoothServiceClassId } = info;
  if (usbVendorId !== undefined) return `usb ${usbVendorId}:${usbProductId ?? ''}`;
  if (bluetoothServiceClassId !== undefined) return `bluetooth ${String(bluetoothServiceClassId)}`;
  return 'port';
}

function nameOf(error: unknown): string {
  return error instanceof Error ? error.name : '';
}
