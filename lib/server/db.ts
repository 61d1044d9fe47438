// The way to the database. The client is made at first use, once for a process, also across hot reloads.
import { PrismaPg } from '@prisma/adapter-pg';
import { type Prisma, PrismaClient } from '../../prisma/generated/client.ts';
import { databaseUrl } from './env.ts';

export type Tx = Prisma.TransactionClient;

const POOL = 10;
const kept = globalThis as typeof globalThis & { cuewrightDatabase?: PrismaClient };

export function database(): PrismaClient {
  kept.cuewrightDatabase ??= new PrismaClient({
    adapter: new PrismaPg({ connectionString: databaseUrl(), max: POOL }),
  });
  return kept.cuewrightDatabase;
}

/** Ends the pool, so that a process can end or a test can point elsewhere. */
export async function closeDatabase(): Promise<void> {
  const open = kept.cuewrightDatabase;
  kept.cuewrightDatabase = undefined;
  await open?.$disconnect();
}

/** What row-level security asks; holds until the transaction ends. */
export type Settings = { readonly operator?: string; readonly person?: string; readonly signing_in?: string };

export async function setFor(tx: Tx, settings: Settings): Promise<void> {
  for (const [name, value] of Object.entries(settings)) {
    await tx.$executeRaw`SELECT set_config(${`cuewright.${name}`}, ${value}, true)`;
  }
}

export const TRANSACTION = { maxWait: 10_000, timeout: 30_000 } as const;

/** Runs `deed` in one transaction with those settings. */
export function transaction<T>(settings: Settings, deed: (tx: Tx) => Promise<T>): Promise<T> {
  return database().$transaction(async (tx) => {
    await setFor(tx, settings);
    return deed(tx);
  }, TRANSACTION);
}
