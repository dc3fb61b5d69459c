import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { uuidv7 } from '@/lib/store/uuid';
import { jobStart, newGauge } from '../store/a-job';
import { freshDatabase } from '../setup/fresh-database';
import { codeOf, startApi } from './api';

const databaseUrl = await freshDatabase();
const api = await startApi(databaseUrl);
const onPostgresql = process.env['TEST_DATABASE'] === 'postgresql';
const open: AbortController[] = [];
afterAll(() => open.forEach((one) => one.abort()));

type Event = { id: string; event: string; data: string };
type Loose = Record<string, unknown>;

/** Follows the feed; `events` are those so far, `until` waits for so many changes. */
async function follow(query: string, headers: Record<string, string> = {}, on = api) {
  const gone = new AbortController();
  open.push(gone);
  const response = await fetch(on.url(`/live${query}`), { headers, signal: gone.signal });
  const events: Event[] = [];
  void (async () => {
    let text = '';
    for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
      text += chunk;
      const blocks = text.split('\n\n');
      text = blocks.pop()!;
      events.push(...blocks.map(eventOf));
    }
  })().catch(() => {});
  const changes = (): (Loose & { id: string })[] =>
    events
      .filter(({ event }) => event === 'message')
      .map(({ id, data }) => ({ ...(JSON.parse(data) as Loose), id }));
  const until = async (count: number, longestMs = 1000) => {
    const end = Date.now() + longestMs;
    while (changes().length < count && Date.now() < end) await wait(5);
    return changes();
  };
  return { response, events, changes, until, stop: () => gone.abort() };
}

function eventOf(block: string): Event {
  const field = (name: string) =>
    block
      .split('\n')
      .find((line) => line.startsWith(`${name}: `))
      ?.slice(name.length + 2) ?? '';
  return { id: field('id'), event: field('event') || 'message', data: field('data') };
}

const seqNow = async () => (await api.get<{ seq: number }>('/health')).body.seq;

describe('the live feed', () => {
  it('says at once that it is heard, and is not kept on the way', async () => {
    const { response, events, stop } = await follow('');
    const end = Date.now() + 1000;
    while (events.length === 0 && Date.now() < end) await wait(5);
    expect(events[0]!.event).toBe('beat');
    expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    expect(response.headers.get('cache-control')).toBe('no-store, no-transform');
    stop();
  });

  it('tells of a change within a second of its being kept', async () => {
    const { until, stop } = await follow('');
    const gauge = newGauge();
    await api.post('/gauges', gauge);
    const begun = Date.now();
    const [change] = await until(1);
    expect(Date.now() - begun).toBeLessThan(1000);
    expect(change).toMatchObject({ thing: 'gauge', act: 'made', thingId: gauge.id, jobId: null });
    expect(change!.id).toBe(String((change as Loose)['seq']));
    stop();
  });

  it('goes on where a reader was cut off, by the number it heard last', async () => {
    const after = await seqNow();
    const gauges = [newGauge(), newGauge(), newGauge()];
    for (const gauge of gauges) await api.post('/gauges', gauge);
    const all = await follow(`?after=${after}`);
    const heard = await all.until(3);
    expect(heard.map(({ thingId }) => thingId)).toEqual(gauges.map(({ id }) => id));
    const rest = await follow(`?after=${after}`, { 'last-event-id': heard[0]!.id });
    expect((await rest.until(2)).map(({ thingId }) => thingId)).toEqual(
      gauges.slice(1).map(({ id }) => id),
    );
    all.stop();
    rest.stop();
  });

  it('tells of one job and of what belongs to no job', async () => {
    const [one, other] = [jobStart(1), jobStart(1)];
    await api.post('/jobs/start', one);
    const { until, changes, stop } = await follow(`?job=${one.job.id}`);
    await api.post('/jobs/start', other);
    await api.post('/gauges', newGauge());
    await api.patch(`/jobs/${one.job.id}`, { version: 1, name: 'Renamed' });
    await until(2);
    await wait(300);
    expect(changes().map(({ thing, act }) => [thing, act])).toEqual([
      ['gauge', 'made'],
      ['job', 'changed'],
    ]);
    stop();
  });

  it.each(['?job=x', '?after=-1', '?after=1.5', '?after=x'])('does not take %s', async (query) => {
    const answer = await api.get(`/live${query}`);
    expect([answer.status, codeOf(answer)]).toEqual([422, 'wrong-shape']);
  });

  it('serves many readers, and forgets those who leave', async () => {
    const readers = await Promise.all(Array.from({ length: 30 }, () => follow('')));
    readers.slice(0, 20).forEach(({ stop }) => stop());
    await api.post('/gauges', newGauge());
    const heard = await Promise.all(readers.slice(20).map(({ until }) => until(1)));
    expect(heard.map(({ length }) => length)).toEqual(Array(10).fill(1));
    readers.forEach(({ stop }) => stop());
    expect(api.server.output()).not.toContain('Error');
  });
});

if (onPostgresql) {
  describe('two servers on one database', () => {
    it('tell of one another’s changes within a second', async () => {
      const second = await startApi(databaseUrl);
      const here = await follow('');
      const there = await follow('', {}, second);
      const [mine, hers] = [newGauge(), newGauge()];
      await api.post('/gauges', mine);
      await second.post('/gauges', hers);
      const begun = Date.now();
      const [a, b] = [await here.until(2), await there.until(2)];
      expect(Date.now() - begun).toBeLessThan(1000);
      expect(a.map(({ thingId }) => thingId)).toEqual([mine.id, hers.id]);
      expect(b.map(({ thingId }) => thingId)).toEqual([mine.id, hers.id]);
      here.stop();
      there.stop();
    });
  });
}

describe('a server that stops', () => {
  it('ends the feed instead of waiting for its readers, and takes them up again', async () => {
    const { until, response, stop } = await follow('');
    const person = { id: uuidv7(), name: 'Ruth' };
    await api.post('/people', person);
    const [last] = await until(1);
    const begun = Date.now();
    expect(await api.server.stop()).toBe(0);
    expect(Date.now() - begun).toBeLessThan(10_000);
    await api.server.restart();
    const again = await follow('', { 'last-event-id': String(Number(last!.id) - 1) });
    expect((await again.until(1))[0]).toMatchObject({ thingId: person.id });
    expect(response.ok).toBe(true);
    stop();
    again.stop();
  });
});
