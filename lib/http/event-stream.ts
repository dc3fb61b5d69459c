const beatMs = 15_000;
const retryMs = 2000;
const roomBytes = 65_536;

type Event = { seq: number };
type Send = (events: readonly Event[]) => Promise<void>;

const head = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'no-store, no-transform',
  'x-accel-buffering': 'no',
};

/**
 * An answer that goes on: server-sent events (WHATWG HTML, 9.2), each with its `seq` as id.
 *
 * A `beat` is sent at once and then every fifteen seconds, so that the other end knows that it is heard.
 * `send` answers when the connection can take more. The stream ends when the reader goes away; a server
 * that stops closes it.
 *
 * @param follow begins to send, and answers how to stop
 * @throws what `follow` throws; then there is no stream
 */
export async function eventStream(
  request: Request,
  follow: (send: Send) => Promise<() => void>,
): Promise<Response> {
  if (request.method === 'HEAD') return new Response(null, { headers: head });
  const outlet = new Outlet();
  const send: Send = (events) =>
    outlet.write(
      events.map((event) => `id: ${event.seq}\ndata: ${JSON.stringify(event)}\n\n`).join(''),
    );
  void outlet.write(`retry: ${retryMs}\n${beat}`);
  const beats = setInterval(() => void outlet.write(beat), beatMs);
  outlet.onEnd(() => clearInterval(beats));
  try {
    outlet.onEnd(await follow(send));
  } catch (error) {
    outlet.end();
    throw error;
  }
  request.signal.addEventListener('abort', () => outlet.end());
  return new Response(outlet.stream, { headers: head });
}

const beat = 'event: beat\ndata: {}\n\n';
const encoder = new TextEncoder();

/** A stream that is written to from outside, and says when it has room and when it has ended. */
class Outlet {
  readonly stream: ReadableStream<Uint8Array>;
  #controller!: ReadableStreamDefaultController<Uint8Array>;
  #ended = false;
  #endings: (() => void)[] = [];
  #roomAgain = () => {};

  constructor() {
    this.stream = new ReadableStream<Uint8Array>(
      {
        start: (controller) => {
          this.#controller = controller;
        },
        pull: () => this.#roomAgain(),
        cancel: () => this.end(),
      },
      { highWaterMark: roomBytes, size: (chunk) => chunk.length },
    );
  }

  async write(text: string): Promise<void> {
    if (this.#ended) return;
    this.#controller.enqueue(encoder.encode(text));
    if (this.#controller.desiredSize! > 0) return;
    await new Promise<void>((resolve) => {
      const before = this.#roomAgain;
      this.#roomAgain = () => {
        before();
        resolve();
      };
    });
  }

  /** Runs `ending` when the stream ends; at once where it has. */
  onEnd(ending: () => void): void {
    if (this.#ended) ending();
    else this.#endings.push(ending);
  }

  end(): void {
    if (this.#ended) return;
    this.#ended = true;
    for (const ending of this.#endings) ending();
    this.#roomAgain();
    try {
      this.#controller.close();
    } catch {
      // The reader has cancelled it already.
    }
  }
}
