/** Every answer of the API that is not a success, by its stable code. What the store refuses is 422. */
export const problemCodes = {
  'not-json': [400, 'The request body is not JSON'],
  'who-missing': [400, 'A change says which device makes it, in the header fitwright-device'],
  'origin-missing': [403, 'A change says where it comes from, in the header Origin'],
  'other-site': [403, 'A page of another site may not change the notebook'],
  'no-such-address': [404, 'There is nothing at this address'],
  'no-such-thing': [404, 'There is no such thing in the notebook'],
  'wrong-method': [405, 'This address does not take this method'],
  stale: [409, 'Somebody has changed this since; both texts are here'],
  'body-too-large': [413, 'The request body is larger than this address takes'],
  'content-type': [415, 'Send the body as application/json, uncompressed'],
  'wrong-shape': [422, 'The request is not the shape this address takes'],
  unforeseen: [
    500,
    'Something went wrong that nobody foresaw; it is in the log under this reference',
  ],
  'database-busy': [503, 'The notebook is busy; nothing was kept, send it again'],
  'database-away': [503, 'The database does not answer; nothing was kept, send it again'],
  'disk-full': [507, 'The disk of the shop computer is full; nothing was kept'],
} as const satisfies Record<string, readonly [number, string]>;

export type ProblemCode = keyof typeof problemCodes;
