import path from 'node:path';
import { defineConfig } from 'prisma/config';

// Prisma's own engine is a download; lib/boot/schema-engine.mjs speaks its protocol from an npm package instead.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= path.join(import.meta.dirname, 'lib', 'boot', 'schema-engine.mjs');

export default defineConfig({
  schema: path.join('prisma', 'schema'),
  migrations: { path: path.join('prisma', 'migrations') },
  datasource: { url: process.env.OWNER_DATABASE_URL ?? 'postgresql://unset' },
});
