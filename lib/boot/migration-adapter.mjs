// The schema engine's way to PostgreSQL, over pg. Prisma's own adapter will not do here: it rejects the catalogue's "char",
// cuts scripts at every semicolon, and takes the main database for the shadow one.
import { randomUUID } from 'node:crypto';
import { createRequire } from 'node:module';
import pg from 'pg';

const require = createRequire(import.meta.url);
const kit = createRequire(require.resolve('@prisma/adapter-pg'))('@prisma/driver-adapter-utils');
const kinds = kit.ColumnTypeEnum;

const columnKinds = new Map([
  [16, kinds.Boolean],
  [17, kinds.Bytes],
  [18, kinds.Character],
  [20, kinds.Int64],
  [21, kinds.Int32],
  [23, kinds.Int32],
  [26, kinds.Int64],
  [114, kinds.Json],
  [700, kinds.Float],
  [701, kinds.Double],
  [1000, kinds.BooleanArray],
  [1002, kinds.CharacterArray],
  [1003, kinds.TextArray],
  [1005, kinds.Int32Array],
  [1007, kinds.Int32Array],
  [1009, kinds.TextArray],
  [1015, kinds.TextArray],
  [1016, kinds.Int64Array],
  [1028, kinds.Int64Array],
  [1114, kinds.DateTime],
  [1184, kinds.DateTime],
  [1700, kinds.Numeric],
  [2950, kinds.Uuid],
  [3802, kinds.Json],
]);
const isoTime = (text) => {
  const joined = text.replace(' ', 'T');
  return /[+-]\d\d(:?\d\d)?$/.test(joined) ? joined.replace(/([+-]\d\d)$/, '$1:00') : `${joined}+00:00`;
};
const parsers = new Map([
  [26, String],
  [114, String],
  [3802, String],
  [1114, isoTime],
  [1184, isoTime],
]);
const nameArrays = new Set([1002, 1003]);
const types = {
  getTypeParser: (oid, format) => parsers.get(oid) ?? pg.types.getTypeParser(nameArrays.has(oid) ? 1009 : oid, format),
};

const ownParameters = ['schema', 'connection_limit', 'pool_timeout', 'connect_timeout', 'pgbouncer'];

function split(address) {
  const url = new URL(address);
  const schema = url.searchParams.get('schema') ?? undefined;
  for (const name of ownParameters) url.searchParams.delete(name);
  return { url, schema };
}

async function connect(url) {
  const client = new pg.Client({ connectionString: url.toString() });
  client.on('error', () => {});
  await client.connect();
  return client;
}

class Connection {
  provider = 'postgres';
  adapterName = '@prisma/adapter-pg';
  #client;
  #schema;
  #whenClosed;
  #closed = false;

  constructor(client, schema, whenClosed) {
    this.#client = client;
    this.#schema = schema;
    this.#whenClosed = whenClosed;
  }

  async #ask(question) {
    try {
      return await this.#client.query(question);
    } catch (error) {
      if (typeof error.code !== 'string' || !error.severity) throw error;
      const { code, severity, message, detail, column, hint } = error;
      const original = { originalCode: code, originalMessage: message };
      throw new kit.DriverAdapterError({
        kind: 'postgres',
        ...original,
        code,
        severity,
        message,
        detail,
        column,
        hint,
      });
    }
  }

  async queryRaw({ sql, args }) {
    const { fields, rows } = await this.#ask({ text: sql, values: args, rowMode: 'array', types });
    const columnTypes = fields.map((field) => columnKinds.get(field.dataTypeID) ?? kinds.Text);
    return { columnNames: fields.map((field) => field.name), columnTypes, rows };
  }

  async executeRaw({ sql, args }) {
    return (await this.#ask({ text: sql, values: args, rowMode: 'array', types })).rowCount ?? 0;
  }

  async executeScript(script) {
    await this.#ask(script);
  }

  getConnectionInfo() {
    return { schemaName: this.#schema, supportsRelationJoins: true };
  }

  async startTransaction() {
    await this.#ask('BEGIN');
    const end = { commit: () => this.#ask('COMMIT'), rollback: () => this.#ask('ROLLBACK') };
    return Object.assign(new Connection(this.#client, this.#schema), { options: { usePhantomQuery: false } }, end);
  }

  async dispose() {
    if (this.#closed) return;
    this.#closed = true;
    await this.#client.end();
    await this.#whenClosed?.();
  }
}

async function open(url, schema, whenClosed) {
  const client = await connect(url);
  if (schema) await client.query(`SET search_path = ${pg.escapeIdentifier(schema)}`);
  return new Connection(client, schema, whenClosed);
}

async function onServer(address, deed) {
  const { url } = split(address);
  const database = decodeURIComponent(url.pathname.slice(1));
  url.pathname = '/postgres';
  const client = await connect(url);
  try {
    await deed(client, pg.escapeIdentifier(database));
    return database;
  } finally {
    await client.end();
  }
}

export const createDatabase = (address) =>
  onServer(address, async (client, name) => {
    try {
      await client.query(`CREATE DATABASE ${name}`);
    } catch (error) {
      if (error.code !== '42P04' && error.code !== '23505') throw error; // another process was faster
    }
  });

export const dropDatabase = (address) =>
  onServer(address, (client, name) => client.query(`DROP DATABASE ${name} WITH (FORCE)`));

/** What the engine calls a migration-aware adapter factory. */
export class MigrationAdapter {
  provider = 'postgres';
  adapterName = '@prisma/adapter-pg';
  #datasource;
  #opened = [];

  constructor(datasource) {
    this.#datasource = datasource;
  }

  async connect() {
    const { url, schema } = split(this.#datasource.url);
    const connection = await open(url, schema);
    this.#opened.push(connection);
    return connection;
  }

  async connectToShadowDb() {
    const given = this.#datasource.shadowDatabaseUrl;
    if (given) {
      const { url, schema } = split(given);
      return open(url, schema);
    }
    const { url } = split(this.#datasource.url);
    url.pathname = `/cuewright_shadow_${randomUUID()}`;
    await createDatabase(url.toString());
    return open(url, undefined, () => dropDatabase(url.toString()));
  }

  async close() {
    for (const connection of this.#opened.splice(0)) await connection.dispose();
  }
}

export const bound = (adapter) => kit.bindMigrationAwareSqlAdapterFactory(adapter);
