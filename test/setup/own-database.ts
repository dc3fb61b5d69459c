import { freshDatabase } from './fresh-database';

/** Run before each test file of the store: its DATABASE_URL is a fresh notebook of its own. */
process.env['DATABASE_URL'] = await freshDatabase();
