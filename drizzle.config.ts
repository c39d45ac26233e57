import { defineConfig } from 'drizzle-kit';

/** How migrations are made: `npx drizzle-kit generate --name what-changes`. */
export default defineConfig({ dialect: 'postgresql', schema: './src/store/schema.ts', out: './src/store/migrations' });
