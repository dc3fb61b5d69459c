import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { followPort } from '@/lib/gauge-port/follow-port';
import type { MessageCut } from '@/lib/gauge-port/message-reader';
import type { GaugePort } from '@/lib/gauge-port/port';
import { FakeHouse, FakePort } from './fake-port';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const settings = { baudRate: 4800, frame: '7E2' } as const;

function follow(
  house: FakeHouse,
  { port = 'usb 1027:24577', cut = 'line' }: { port?: string | GaugePort; cut?: MessageCut } = {},
) {
  const heard: string[] = [];
  const states: string[] = [];
  const following = followPort({
    house,
    port,
    settings,
    cut,
    pauseMs: 150,
    onMessage: (text) => heard.push(text),
    onSpoilt: (fault) => heard.push(`(${fault})`),
    onState: (state) => states.push(state),
  });
  return { heard, states, following };
}
/** Past the time in which bytes may belong to a message that began before. */
const settle = (ms = 200) => vi.advanceTimersByTimeAsync(ms);

describe('followPort', () => {
  it('opens the remembered port as it is set, without being asked, and tells what comes', async () => {
    const port = new FakePort();
    const { heard, states } = follow(new FakeHouse([new FakePort('usb 9:9'), port]));
    await settle();
    expect(port.opened).toEqual([settings]);
    port.send('18.003\r\n18.');
    port.send('005\r\n');
    await settle();
    expect(heard).toEqual(['18.003', '18.005']);
    expect(states).toEqual(['opening', 'open']);
  });

  it('takes no half message for a reading when it was opened in the middle of one', async () => {
    const port = new FakePort();
    const { heard } = follow(new FakeHouse([port]));
    await settle(10);
    port.send('8.003\r18.005\r');
    await settle();
    expect(heard).toEqual(['18.005']);
  });

  it.each(['parity', 'frame', 'break', 'overrun'] as const)(
    'never makes a reading of a message with a %s fault, says so, and reads on',
    async (fault) => {
      const port = new FakePort();
      const { heard, states } = follow(new FakeHouse([port]));
      await settle();
      port.send('1');
      port.fault(fault);
      port.send('8.003\r18.005\r');
      await settle();
      expect(heard).toEqual([`(${fault})`, '18.005']);
      expect(states).toEqual(['opening', 'open']);
    },
  );

  it('tells of a fault before anything else came', async () => {
    const port = new FakePort();
    const { heard } = follow(new FakeHouse([port]));
    await settle();
    port.fault('parity');
    port.send('003\r18.005\r');
    await settle();
    expect(heard).toEqual(['(parity)', '18.005']);
  });

  it('says that it was unplugged, drops what was half sent, and opens it again when it is back', async () => {
    const port = new FakePort();
    const house = new FakeHouse([port]);
    const { heard, states } = follow(house);
    await settle();
    port.send('18.00');
    port.fault('lost');
    house.ports = [];
    await settle();
    expect(states).toEqual(['opening', 'open', 'lost']);
    const again = new FakePort();
    house.plugIn(again);
    await settle();
    again.send('18.004\r');
    await settle();
    expect(heard).toEqual(['18.004']);
    expect(states).toEqual(['opening', 'open', 'lost', 'opening', 'open']);
  });

  it('waits for a port that is not plugged in yet', async () => {
    const house = new FakeHouse([]);
    const { states } = follow(house);
    await settle();
    expect(states).toEqual(['not here']);
    house.plugIn(new FakePort());
    await settle();
    expect(states).toEqual(['not here', 'opening', 'open']);
  });

  it('does not guess between two of one make, but takes the one that was just chosen', async () => {
    const [one, other] = [new FakePort(), new FakePort()];
    const { states } = follow(new FakeHouse([one, other]));
    await settle();
    expect(states).toEqual(['alike']);
    const chosen = follow(new FakeHouse([one, other]), { port: other });
    await settle();
    expect(chosen.states).toEqual(['opening', 'open']);
    expect([one.isOpen, other.isOpen]).toEqual([false, true]);
  });

  it.each([
    ['in use', 'in use'],
    ['refused', 'refused'],
    ['lost', 'refused'],
  ] as const)('says that opening ended in %s: %s', async (fault, state) => {
    const port = new FakePort();
    port.refuses = fault;
    const { states } = follow(new FakeHouse([port]));
    await settle();
    expect(states).toEqual(['opening', state]);
  });

  it('ends a message by a pause only where the gauge was taught so', async () => {
    const port = new FakePort();
    const { heard } = follow(new FakeHouse([port]), { cut: 'pause' });
    await settle();
    port.send('18.0');
    await settle(100);
    port.send('03');
    await settle(149);
    expect(heard).toEqual([]);
    await settle(1);
    expect(heard).toEqual(['18.003']);
    port.send('1');
    port.fault('parity');
    port.send('8.005');
    await settle(150);
    expect(heard).toEqual(['18.003', '(parity)']);
  });

  it('closes the port when it is stopped, and hears nothing any more', async () => {
    const port = new FakePort();
    const house = new FakeHouse([port]);
    const { heard, states, following } = follow(house);
    await settle();
    await following.stop();
    expect(port.isOpen).toBe(false);
    expect(house.listeners.size).toBe(0);
    port.send('18.003\r');
    await settle();
    expect(heard).toEqual([]);
    expect(states).toEqual(['opening', 'open']);
  });

  it('opens nothing when it is stopped at once', async () => {
    const port = new FakePort();
    const { following } = follow(new FakeHouse([port]));
    await following.stop();
    await settle();
    expect(port.isOpen).toBe(false);
  });
});
