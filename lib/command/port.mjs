import { createServer } from 'node:net';
import { Refusal } from './refusal.mjs';

/** The address of this machine that no other machine can reach. */
export const address = '127.0.0.1';

/**
 * The port to serve on: PORT, or 4180; 0 takes any free one. Finds out early that it is taken.
 *
 * @param {string | undefined} text
 * @returns {Promise<number>}
 * @throws {Refusal} when it is no port, or another program has it
 */
export async function choosePort(text = process.env.PORT) {
  const wanted = text === undefined || text.trim() === '' ? 4180 : Number(text);
  if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) {
    throw new Refusal(`PORT=${text} is not a port; choose a whole number from 1024 to 65535.`);
  }
  const probe = createServer();
  try {
    await listen(probe, wanted);
    return probe.address().port;
  } finally {
    await new Promise((done) => probe.close(done));
  }
}

/**
 * @param {import('node:net').Server} server
 * @param {number} port
 * @returns {Promise<void>}
 * @throws {Refusal} when the port cannot be had
 */
export function listen(server, port) {
  return new Promise((done, fail) => {
    server.once('error', (error) => fail(inWords(error, port)));
    server.listen(port, address, done);
  });
}

function inWords(error, port) {
  if (error.code === 'EADDRINUSE') {
    return new Refusal(
      `Port ${port} is in use by another program, perhaps by a Fitwright already running. Stop that one, or choose another port: PORT=4181 npm start`,
    );
  }
  if (error.code === 'EACCES') {
    return new Refusal(`This account may not use port ${port}. Choose one from 1024: PORT=4180.`);
  }
  return error;
}
