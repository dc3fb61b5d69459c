import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pictureBytesMax } from '@/lib/schema/picture';
import { changeThing } from '@/lib/store/change-thing';
import { changesAfter } from '@/lib/store/changes-after';
import { closeStore } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { jobSheet } from '@/lib/store/job-sheet';
import { lastSeq } from '@/lib/store/last-seq';
import { makeThing } from '@/lib/store/make-thing';
import { pictureFile } from '@/lib/store/picture-file';
import { pictureHead } from '@/lib/store/picture-head';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, who } from './a-job';
import { aJpeg, aPng } from './a-picture';

let job: Awaited<ReturnType<typeof aJob>>;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

const fresh = (bytes: Uint8Array) => ({
  id: uuidv7(),
  jobId: job.jobId,
  name: 'Sheet 1',
  base64: Buffer.from(bytes).toString('base64'),
});

describe('a picture of the drawing', () => {
  it('is kept byte for byte, with the kind and size its head says', async () => {
    const bytes = Buffer.concat([aPng(40, 30), randomBytes(300_000)]);
    const picture = fresh(bytes);
    const made = await makeThing('picture', picture, who);
    const row = {
      id: picture.id,
      jobId: job.jobId,
      name: 'Sheet 1',
      mediaType: 'image/png',
      widthPx: 40,
      heightPx: 30,
      version: 1,
      createdAt: expect.any(String),
      struckAt: null,
    };
    expect(made).toEqual({ state: 'made', row });
    expect((await jobSheet(job.jobId))!.pictures).toEqual([row]);
    const file = (await pictureFile(picture.id))!;
    expect(file.mediaType).toBe('image/png');
    expect(Buffer.compare(file.bytes, bytes)).toBe(0);
    expect(await pictureFile(uuidv7())).toBeNull();
  });

  it('is kept whole when it is a few bytes', async () => {
    const bytes = aPng(1, 1);
    const picture = fresh(bytes);
    await makeThing('picture', picture, who);
    expect(Buffer.compare((await pictureFile(picture.id))!.bytes, bytes)).toBe(0);
  });

  it('is known when sent again, and refused with other bytes or another name', async () => {
    const picture = fresh(aJpeg(8, 6));
    await makeThing('picture', picture, who);
    expect((await makeThing('picture', picture, who)).state).toBe('known');
    const other = {
      ...picture,
      base64: Buffer.concat([aJpeg(8, 6), Buffer.alloc(1)]).toString('base64'),
    };
    expect(await makeThing('picture', other, who)).toMatchObject({ code: 'other-content' });
    const named = { ...picture, name: 'Sheet 2' };
    expect(await makeThing('picture', named, who)).toMatchObject({ code: 'other-content' });
  });

  it('may be the largest there is, and no larger', async () => {
    const largest = Buffer.concat([aPng(2, 2), Buffer.alloc(pictureBytesMax - aPng(2, 2).length)]);
    expect((await makeThing('picture', fresh(largest), who)).state).toBe('made');
    const larger = Buffer.concat([largest, Buffer.alloc(1)]);
    const refused = { state: 'refused', code: 'picture-too-large' };
    expect(await makeThing('picture', fresh(larger), who)).toMatchObject(refused);
  });

  it('is nothing else than a picture', async () => {
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>');
    const refused = { state: 'refused', code: 'not-a-picture', at: 'base64' };
    expect(await makeThing('picture', fresh(svg), who)).toMatchObject(refused);
  });

  it('carries balloons', async () => {
    const picture = fresh(aPng(3, 3));
    await makeThing('picture', picture, who);
    const change = { version: 1, pictureId: picture.id, pictureX: 0.1, pictureY: 2 / 3 };
    const changed = await changeThing('feature', job.bore.id, change, who);
    expect(changed).toMatchObject({ state: 'changed', row: { ...change, version: 2 } });
    expect((await findThings('feature', { id: job.bore.id }))[0]).toMatchObject({
      pictureY: 2 / 3,
    });
  });

  it('has a line in the change log without its bytes', async () => {
    const from = await lastSeq();
    const picture = fresh(aPng(5, 5));
    await makeThing('picture', picture, who);
    const [line] = await changesAfter(from, 1);
    expect(Object.keys(line!.after)).not.toContain('bytes');
    expect(line!.after).toMatchObject({ id: picture.id, widthPx: 5 });
  });
});

describe('pictureHead', () => {
  it.each([
    ['a PNG', aPng(640, 480), 'image/png', 640, 480],
    ['a baseline JPEG', aJpeg(800, 600), 'image/jpeg', 800, 600],
    ['a progressive JPEG', aJpeg(801, 601, 0xc2), 'image/jpeg', 801, 601],
    ['the largest side', aJpeg(20_000, 1), 'image/jpeg', 20_000, 1],
  ])('reads %s', (_, bytes, mediaType, widthPx, heightPx) => {
    expect(pictureHead(bytes)).toEqual({ mediaType, widthPx, heightPx });
  });

  it.each([
    ['nothing', Buffer.alloc(0)],
    ['text', Buffer.from('hello')],
    ['a GIF', Buffer.from('GIF89a\x01\0\x01\0', 'latin1')],
    ['a PNG cut short', aPng(4, 4).subarray(0, 30)],
    [
      'a PNG whose first chunk is another',
      Buffer.from(aPng(4, 4).toString('latin1').replace('IHDR', 'IDAT'), 'latin1'),
    ],
    ['a PNG of no size', aPng(0, 4)],
    ['a picture with too long a side', aJpeg(20_001, 4)],
    ['a JPEG of no height', aJpeg(4, 0)],
    ['a JPEG cut short before its frame', aJpeg(4, 4).subarray(0, 60)],
    [
      'a JPEG cut short in its frame',
      aJpeg(4, 4).subarray(0, aJpeg(4, 4).indexOf('ffc00011', 'hex') + 8),
    ],
    ['a JPEG that has no frame', Buffer.from('ffd8ffda000400000000ffd9', 'hex')],
  ])('does not take %s', (_, bytes) => {
    expect(pictureHead(bytes)).toBeUndefined();
  });

  it('ends on any bytes', () => {
    for (let i = 0; i < 2000; i += 1) {
      const bytes = Buffer.concat([Buffer.from('ffd8ff', 'hex'), randomBytes(i % 97)]);
      const head = pictureHead(bytes);
      expect(head === undefined || head.widthPx >= 1).toBe(true);
    }
  });
});
