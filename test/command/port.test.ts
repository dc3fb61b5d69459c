import { createServer } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { choosePort, listen } from '@/lib/command/port.mjs';

describe('choosePort', () => {
  it('takes the port asked for, and any free one for 0', async () => {
    const free = await choosePort('0');
    expect(free).toBeGreaterThan(0);
    expect(await choosePort(String(free))).toBe(free);
  });

  it('says in one sentence that a port is taken, and how to choose another', async () => {
    const port = await choosePort('0');
    const other = createServer();
    onTestFinished(() => void other.close());
    await listen(other, port);
    await expect(choosePort(String(port))).rejects.toThrow(
      new RegExp(`^Port ${port} is in use by another program.* PORT=4181 npm start$`),
    );
  });

  it.each(['-1', '65536', '80.5', 'http'])('refuses PORT=%s', async (text) => {
    await expect(choosePort(text)).rejects.toThrow('is not a port');
  });
});
