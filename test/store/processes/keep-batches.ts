// Keeps readings like the one given as JSON in batches of ten, for ever, and prints the ids of each batch
// once it is acknowledged. What is refused or fails is printed as `failed: ` and why, and tried no further.
import type { NewReading } from '@/lib/schema/reading';
import { keepReadings } from '@/lib/store/readings';
import { troubleOf } from '@/lib/store/trouble-of';
import { uuidv7 } from '@/lib/store/uuid';

const like = JSON.parse(process.argv[2]!) as NewReading;
const deviceId = uuidv7();

try {
  for (let deviceSeq = 1; ; deviceSeq += 10) {
    const entries = Array.from({ length: 10 }, (_, i) => ({
      ...like,
      id: uuidv7(),
      deviceSeq: deviceSeq + i,
    }));
    const outcomes = await keepReadings({ deviceId, entries });
    const kept = outcomes.flatMap(({ id, state }) => (state === 'kept' ? [id] : []));
    process.stdout.write(`${kept.join(' ')}\n`);
    await new Promise(setImmediate);
  }
} catch (error) {
  process.stdout.write(`failed: ${troubleOf(error)}\n`);
}
