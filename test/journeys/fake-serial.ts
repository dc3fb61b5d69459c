import type { Page } from 'playwright-core';

/**
 * Gives the page a serial interface whose port the test holds the other end of. As in a browser, a port must
 * be chosen in a press before it is remembered, it is remembered over a reload, and it is gone while it is
 * unplugged.
 */
export async function fakeSerial(page: Page): Promise<void> {
  await page.addInitScript(() => {
    type Controller = ReadableStreamDefaultController<Uint8Array>;
    const serial = new EventTarget();
    const word = (name: string) => localStorage.getItem(`fake-serial-${name}`) === 'yes';
    const opened: unknown[] = [];
    let controller: Controller | null = null;
    let readable: ReadableStream<Uint8Array> | null = null;
    const renew = () => {
      readable = new ReadableStream({ start: (one) => void (controller = one) });
    };
    const port = {
      getInfo: () => ({ usbVendorId: 1027, usbProductId: 24577 }),
      async open(options: unknown) {
        if (readable !== null) throw new DOMException('', 'InvalidStateError');
        opened.push(options);
        renew();
      },
      get readable() {
        return readable;
      },
      async close() {
        readable = null;
        controller = null;
      },
    };
    let isPlugged = true;
    Object.assign(serial, {
      getPorts: async () => (isPlugged && word('chosen') ? [port] : []),
      async requestPort() {
        if (!navigator.userActivation.isActive) throw new DOMException('', 'SecurityError');
        localStorage.setItem('fake-serial-chosen', 'yes');
        return port;
      },
    });
    Object.defineProperty(navigator, 'serial', { value: serial, configurable: true });
    Object.assign(window, {
      fakePort: {
        opened,
        send(text: string) {
          controller!.enqueue(Uint8Array.from(text, (one) => one.charCodeAt(0)));
        },
        fail(name: string) {
          const old = controller!;
          renew();
          old.error(new DOMException('', name));
        },
        unplug() {
          isPlugged = false;
          const old = controller!;
          readable = null;
          controller = null;
          old.error(new DOMException('', 'NetworkError'));
        },
        plugIn() {
          isPlugged = true;
          serial.dispatchEvent(new Event('connect'));
        },
      },
    });
  });
}

type FakePort = {
  opened: unknown[];
  send: (text: string) => void;
  fail: (name: string) => void;
  unplug: () => void;
  plugIn: () => void;
};
declare global {
  interface Window {
    fakePort: FakePort;
  }
}

/** Bytes from the gauge, once its line has been open long enough for a message to begin with them. */
export async function sendBytes(page: Page, text: string): Promise<void> {
  await page.evaluate((bytes) => window.fakePort.send(bytes), text);
}
