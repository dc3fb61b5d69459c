const longestMs = 15_000;

/**
 * Stops a server so that nothing begun is lost: no new connection is taken, requests under way are
 * answered, and streams of events and upgraded connections, which have no end, are ended. An answer
 * that does not come within fifteen seconds is given up.
 *
 * @param {import('node:http').Server} server
 * @returns {{ follow: (response: import('node:http').ServerResponse) => void, stop: () => Promise<void> }}
 *   `follow` is told of each answer as its request arrives, before anything sets its content type
 */
export function stopCleanly(server) {
  /** @type {Set<import('node:http').ServerResponse>} */
  const open = new Set();
  /** @type {Set<import('node:stream').Duplex>} */
  const upgraded = new Set();
  server.on('upgrade', (_, socket) => {
    upgraded.add(socket);
    socket.once('close', () => upgraded.delete(socket));
  });
  let stopping = false;
  const follow = (response) => {
    open.add(response);
    response.once('close', () => open.delete(response));
    if (stopping) response.setHeader('Connection', 'close');
  };
  const stop = async () => {
    stopping = true;
    const closed = new Promise((done) => server.close(done));
    for (const socket of upgraded) socket.destroy();
    for (const response of open) {
      if (!response.headersSent) response.setHeader('Connection', 'close');
    }
    // Again and again: a stream of events has no end of its own and may begin even now, and a
    // connection falls idle only once its answer is out.
    const endRest = () => {
      endStreams(open);
      server.closeIdleConnections();
    };
    const ender = setInterval(endRest, 50);
    endRest();
    await Promise.race([closed, new Promise((done) => setTimeout(done, longestMs).unref())]);
    clearInterval(ender);
    server.closeAllConnections();
  };
  return { follow, stop };
}

function endStreams(open) {
  for (const response of open) {
    const kind = String(response.getHeader('content-type') ?? '');
    if (response.headersSent && kind.startsWith('text/event-stream')) response.end();
  }
}
