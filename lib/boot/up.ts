/**
 * npm start, second half, on the project's own Node: data folder, database, demo world, build, then serving until told to
 * stop. Each expected failure is a sentence that says what to do; running it again takes up where it stopped.
 */
import fs from 'node:fs';
import { makeBuild, makeClient } from './build.ts';
import { dataFolder, makeFolder, readSecrets } from './data-folder.ts';
import { type Database, openDatabase } from './database.ts';
import { ensureDemo } from './demo.ts';
import { checkPort, isLocal, portFrom } from './port.ts';
import { step } from './progress.mjs';
import { Refusal, sentenceFor } from './refusal.ts';
import { type DemoSignIns, demoSignIns, signInLines } from './sign-ins.ts';

const LEAST_SPACE = 200 * 1024 ** 2;
const STOP_MS = 15_000;

type Where = { readonly dev: boolean; readonly host: string; readonly port: number };

const say = (line: string): void => console.log(`  ${line}`);

function checkSpace(folder: string): void {
  const { bavail, bsize } = fs.statfsSync(folder);
  if (bavail * bsize < LEAST_SPACE) {
    throw new Refusal(
      `The disk with ${folder} is full (${Math.floor((bavail * bsize) / 1024 ** 2)} MB left). Free at least 200 MB, then run the same command again.`,
    );
  }
}

/** Where to listen: with demo passwords in the database never where another machine could reach it. */
function addressFor(demo: boolean, wanted: string): string {
  if (!demo || isLocal(wanted)) return wanted;
  console.log(`  HOST=${wanted} is not used: anybody could sign in with the demo passwords.`);
  return '127.0.0.1';
}

/** Settles when this process is asked to end, or when whoever started it has died. */
function whenTold(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => resolve());
    process.on('disconnect', () => resolve());
  });
}

function setEnvironment(database: Database, folder: string, demo: boolean, where: Where): void {
  const { dev, host, port } = where;
  Object.assign(process.env, {
    NODE_ENV: dev ? 'development' : 'production',
    DATABASE_URL: database.appUrl,
    NEXTAUTH_SECRET: process.env.NEXTAUTH_SECRET || readSecrets(folder).session,
    NEXTAUTH_URL: process.env.NEXTAUTH_URL || `http://${isLocal(host) ? 'localhost' : host}:${port}`,
    PORT: String(port),
    HOST: host,
    CUEWRIGHT_DATA: folder,
    CUEWRIGHT_DEMO: demo ? '1' : '',
  });
  // The process that serves has no use for the owner's password.
  delete process.env.OWNER_DATABASE_URL;
}

async function serveUntil(told: Promise<void>, demo: DemoSignIns, where: Where): Promise<void> {
  // Imported only now: what is behind it reads the environment when it is loaded.
  const served = await step('Starting the server', async () => (await import('./serve.ts')).serve(where));
  console.log(`\nReady: ${process.env.NEXTAUTH_URL}`);
  if (demo.people.length > 0) {
    console.log('Listening on this machine only, because everybody knows the demo passwords. Sign in with');
    for (const line of signInLines(demo)) console.log(line);
  }
  console.log('Ctrl-C stops it.');
  await told;
  console.log('\nStopping …');
  setTimeout(() => process.exit(1), STOP_MS).unref();
  await served.stop();
}

async function main(args: readonly string[]): Promise<void> {
  const told = whenTold();
  const dev = args.includes('--dev');
  const port = portFrom(process.env.PORT);
  const wanted = process.env.HOST || '127.0.0.1';
  const folder = dataFolder();
  console.log(`Cuewright${dev ? ' (development)' : ''}`);
  makeFolder(folder);
  checkSpace(folder);
  await checkPort(wanted, port);
  await makeClient();

  const database = await openDatabase(folder, say);
  let serving = false;
  const work = async () => {
    say(`data and secrets: ${folder}`);
    if (!database.place.startsWith(folder)) say(`database: ${database.place}`);
    if (database.applied.length) say(`applied ${database.applied.length} migration(s)`);
    await ensureDemo(database, args.includes('--demo'));
    const demo = await demoSignIns(database.ownerUrl);
    const isDemo = demo.people.length > 0;
    const where = { dev, port, host: addressFor(isDemo, wanted) };
    setEnvironment(database, folder, isDemo, where);
    if (!dev) await makeBuild();
    serving = true;
    await serveUntil(told, demo, where);
  };
  const working = work();
  const stopped = told.then(() => {
    if (serving) return working;
    throw new Refusal('Stopped before it was ready. The same command takes up where it stopped.');
  });
  try {
    await Promise.race([working, stopped]);
  } finally {
    await database.release();
  }
}

try {
  await main(process.argv.slice(2));
  process.exit(0);
} catch (error) {
  console.error(`\n${sentenceFor(error)}`);
  process.exit(1);
}
