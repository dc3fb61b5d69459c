/**
 * The text of a request body, read no further than `bytesMax`.
 *
 * @returns `too large` as soon as more has come or is announced; `not text` where it is not UTF-8
 */
export async function readBody(
  request: Request,
  bytesMax: number,
): Promise<{ text: string } | 'too large' | 'not text'> {
  if (Number(request.headers.get('content-length') ?? 0) > bytesMax) return 'too large';
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let text = '';
  let bytes = 0;
  try {
    for await (const chunk of chunksOf(request)) {
      bytes += chunk.length;
      if (bytes > bytesMax) return 'too large';
      text += decoder.decode(chunk, { stream: true });
    }
    return { text: text + decoder.decode() };
  } catch (error) {
    if (error instanceof TypeError && isEncodingError(error)) return 'not text';
    throw error;
  }
}

async function* chunksOf({ body }: Request): AsyncGenerator<Uint8Array> {
  if (body === null) return;
  const reader = body.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    // Reached also when the rest is not wanted any more.
    void reader.cancel().catch(() => {});
  }
}

function isEncodingError(error: TypeError & { code?: unknown }): boolean {
  return error.code === 'ERR_ENCODING_INVALID_ENCODED_DATA';
}
