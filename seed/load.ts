import { closeStore } from '@/lib/store/client';
import { loadExample } from './load-example';

// Run by `npm run seed`, after the database has been brought up to date.
const { jobId } = await loadExample();
await closeStore();
console.log(`The example is in the notebook: /jobs/${jobId}/board`);
