#!/usr/bin/env node
// Stands in for Prisma's schema engine, which is a download: the same requests by line over standard input, answered by the
// engine's npm package. prisma.config.ts points Prisma here, so a developer makes migrations without a network.
import fs from 'node:fs';
import { createRequire } from 'node:module';
import readline from 'node:readline';
import * as glue from '@prisma/schema-engine-wasm/schema_engine_bg';
import { bound, createDatabase, dropDatabase, MigrationAdapter } from './migration-adapter.mjs';

const EXPECTED = 4466; // the protocol's code for an error that has its own data
const noAccess = new Map([
  ['3D000', 'P1003'],
  ['28P01', 'P1000'],
  ['28000', 'P1000'],
]);

function readArguments(args) {
  const read = { models: [], datasource: {}, command: undefined };
  for (let at = 0; at < args.length; at++) {
    if (args[at] === '--datamodels') read.models.push(args[++at]);
    else if (args[at] === '--datasource') read.datasource = JSON.parse(args[++at]);
    else if (args[at] === '--enabled-preview-features' || args[at] === '--extension-types') at++;
    else if (args[at] === 'cli') read.command = args[++at];
  }
  return read;
}

async function runCommand(command, datasource) {
  try {
    if (command === 'can-connect-to-database') await (await new MigrationAdapter(datasource).connect()).dispose();
    else if (command === 'create-database') await createDatabase(datasource.url);
    else if (command === 'drop-database') await dropDatabase(datasource.url);
    else throw new Error(`unknown command ${command}`);
    return 0;
  } catch (error) {
    const fields = { error_code: noAccess.get(error.code) ?? 'P1001', message: error.message || String(error.code) };
    // Prisma passes over the first line.
    console.error(`schema-engine\n${JSON.stringify({ level: 'ERROR', target: 'schema_engine::logger', fields })}`);
    return 1;
  }
}

function serve({ models, datasource }) {
  const panic = {
    message: '',
    set_message(message) {
      this.message = message;
    },
  };
  globalThis.PRISMA_WASM_PANIC_REGISTRY = panic;
  const adapter = new MigrationAdapter(datasource);
  let prints = 0;
  let current;
  const send = (answer) => process.stdout.write(`${JSON.stringify({ jsonrpc: '2.0', ...answer })}\n`);
  const fail = (id, error) => {
    const message = panic.message || error?.message || String(error);
    const data = {
      is_panic: panic.message !== '',
      message,
      meta: error?.meta ?? null,
      error_code: error?.code ?? null,
    };
    send({ id, error: { code: EXPECTED, message: 'An error happened. Check the data field for details.', data } });
  };

  let opening;
  const engine = () => {
    opening ??= (async () => {
      const place = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
      const module = new WebAssembly.Module(fs.readFileSync(place.replace(/\.js$/, '.wasm')));
      const instance = new WebAssembly.Instance(module, { './schema_engine_bg.js': glue });
      glue.__wbg_set_wasm(instance.exports);
      instance.exports.__wbindgen_start();
      const datamodels = models.length ? models.map((file) => [file, fs.readFileSync(file, 'utf8')]) : undefined;
      return glue.SchemaEngine.new({ datamodels }, (line) => process.stderr.write(`${line}\n`), bound(adapter));
    })();
    return opening;
  };

  async function answer(method, params) {
    if (method === 'createDatabase') {
      return { databaseName: await createDatabase(params.datasource.url ?? datasource.url) };
    }
    const opened = await engine();
    const known = params?.migrationsList;
    // These two open no shadow database: they use what an earlier diagnosis left behind, so there must be one.
    if ((method === 'evaluateDataLoss' || method === 'createMigration') && known.migrationDirectories.length) {
      const { filters } = params;
      await opened.diagnoseMigrationHistory({ migrationsList: known, optInToShadowDatabase: true, filters });
    }
    const result = await opened[method === 'getDatabaseVersion' ? 'version' : method](params);
    if (method !== 'diff' || !result) return result;
    const { stdout, ...rest } = result;
    if (stdout) send({ id: ++prints, method: 'print', params: { content: stdout } });
    return rest;
  }

  const lines = readline.createInterface({ input: process.stdin });
  lines.on('line', async (line) => {
    const { id, method, params } = JSON.parse(line);
    if (!method) return; // Prisma says that it printed
    current = id;
    try {
      send({ id, result: (await answer(method, params)) ?? null });
    } catch (error) {
      fail(id, error);
    }
  });
  lines.on('close', async () => {
    await adapter.close();
    process.exit(0);
  });
  process.on('uncaughtException', (error) => {
    fail(current, error); // a panic of the engine surfaces here
    process.exit(101);
  });
}

const args = process.argv.slice(2);
const wanted = readArguments(args);
if (args.includes('--version') || args.includes('-V')) console.log('schema-engine (wasm)');
else if (wanted.command) process.exit(await runCommand(wanted.command, wanted.datasource));
else serve(wanted);
