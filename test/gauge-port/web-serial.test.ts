import { describe, expect, it, vi } from 'vitest';
import { PortError } from '@/lib/gauge-port/port';
import { webSerialHouse, type WebSerial, type WebSerialPort } from '@/lib/gauge-port/web-serial';

// The browser's interface as wicg.github.io/serial gives it: a port's stream errors with ParityError,
// FramingError, BreakError or BufferOverrunError and is followed by another one, and with NetworkError when
// the device is gone, after which `readable` is null.

type Controller = ReadableStreamDefaultController<Uint8Array>;

class OnePort implements WebSerialPort {
  opened: unknown[] = [];
  readable: ReadableStream<Uint8Array> | null = null;
  controller!: Controller;
  failure: string | null = null;
  closed = 0;

  getInfo() {
    return { usbVendorId: 1027, usbProductId: 24577 };
  }

  async open(options: unknown) {
    if (this.failure !== null) throw new DOMException('', this.failure);
    this.opened.push(options);
    this.renew();
  }

  async close() {
    this.closed += 1;
    this.readable = null;
  }

  renew() {
    this.readable = new ReadableStream({
      start: (controller) => void (this.controller = controller),
    });
  }

  fail(name: string) {
    const old = this.controller;
    if (name === 'NetworkError') this.readable = null;
    else this.renew();
    old.error(new DOMException('', name));
  }
}

function houseOf(port: OnePort) {
  const serial = {
    getPorts: async () => [port],
    requestPort: vi.fn(async () => port),
    addEventListener: vi.fn(),
    removeEventListener: vi.fn(),
  } satisfies WebSerial;
  return { house: webSerialHouse(serial), serial };
}

const settings = { baudRate: 4800, frame: '7E2' } as const;
const faultOf = (reading: Promise<unknown>) =>
  reading.then(
    () => 'none',
    (error: unknown) => (error instanceof PortError ? error.fault : 'another'),
  );

describe('webSerialHouse', () => {
  it.each([
    ['7E2', { baudRate: 4800, dataBits: 7, parity: 'even', stopBits: 2 }],
    ['8N1', { baudRate: 4800, dataBits: 8, parity: 'none', stopBits: 1 }],
    ['8O1', { baudRate: 4800, dataBits: 8, parity: 'odd', stopBits: 1 }],
  ] as const)('opens a port set to %s', async (frame, options) => {
    const port = new OnePort();
    const [ours] = await houseOf(port).house.remembered();
    await ours!.open({ baudRate: 4800, frame });
    expect(port.opened).toEqual([options]);
  });

  it('knows a port again by its make, and is one with what it gave out before', async () => {
    const port = new OnePort();
    const { house } = houseOf(port);
    const [one] = await house.remembered();
    expect(one!.make).toBe('usb 1027:24577');
    expect(await house.choose()).toBe(one);
  });

  it('reads on after a fault of the line, and not after the port is gone', async () => {
    const port = new OnePort();
    const [ours] = await houseOf(port).house.remembered();
    await ours!.open(settings);
    port.controller.enqueue(Uint8Array.of(0x31));
    expect(await ours!.read()).toEqual(Uint8Array.of(0x31));
    for (const [name, fault] of [
      ['ParityError', 'parity'],
      ['FramingError', 'frame'],
      ['BreakError', 'break'],
      ['BufferOverrunError', 'overrun'],
    ] as const) {
      const reading = faultOf(ours!.read());
      port.fail(name);
      expect(await reading).toBe(fault);
    }
    port.controller.enqueue(Uint8Array.of(0x32));
    expect(await ours!.read()).toEqual(Uint8Array.of(0x32));
    const reading = faultOf(ours!.read());
    port.fail('NetworkError');
    expect(await reading).toBe('lost');
    expect(await faultOf(ours!.read())).toBe('lost');
  });

  it('ends a read that waits when it is closed', async () => {
    const port = new OnePort();
    const [ours] = await houseOf(port).house.remembered();
    expect(await ours!.read()).toBeNull();
    await ours!.open(settings);
    const reading = ours!.read();
    await ours!.close();
    expect(await reading).toBeNull();
    expect(port.closed).toBe(1);
  });

  it.each([
    ['InvalidStateError', 'in use'],
    ['NetworkError', 'in use'],
    ['TypeError', 'refused'],
  ])('says of %s on opening: %s', async (name, fault) => {
    const port = new OnePort();
    port.failure = name;
    const [ours] = await houseOf(port).house.remembered();
    expect(await faultOf(ours!.open(settings))).toBe(fault);
  });

  it('takes a closed list for no choice, and anything else for a refusal', async () => {
    const { house, serial } = houseOf(new OnePort());
    serial.requestPort.mockRejectedValueOnce(new DOMException('', 'NotFoundError'));
    expect(await house.choose()).toBeNull();
    serial.requestPort.mockRejectedValueOnce(new DOMException('', 'SecurityError'));
    expect(await faultOf(house.choose())).toBe('refused');
  });
});
