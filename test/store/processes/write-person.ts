// Writes one person, given as JSON, and prints the moment it was kept.
import { closeStore } from '@/lib/store/client';
import { makeThing } from '@/lib/store/make-thing';
import type { New } from '@/lib/store/thing-types';
import { uuidv7 } from '@/lib/store/uuid';

const row = JSON.parse(process.argv[2]!) as New<'person'>;
await makeThing('person', row, { deviceId: uuidv7(), personId: null });
console.log(Date.now());
await closeStore();
