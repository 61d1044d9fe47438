import { expect, test } from 'vitest';
import { rowsOf } from '../../lib/document/model.ts';
import { orderedSteps } from '../../lib/document/order.ts';
import { readDraft } from '../../lib/document/read.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import { someProcedure } from './arbitrary-procedure.ts';
import { type Ledger, lettersOf, mulberry, newLedger, sync, Writer } from './writers.ts';

const RUNS = 600;
const ACTS = 40;
const DEEDS = [
  ...([
    'type',
    'type',
    'type',
    'type',
    'cut',
    'move',
    'move',
    'nudge',
    'insert',
    'paste',
    'remove',
    'restore',
  ] as const),
  ...(['choose', 'branch', 'removeBranch', 'undo', 'undo', 'redo', 'sync', 'sync', 'sync'] as const),
];
const start = newDraftDoc(someProcedure(3));

function run(seed: number): { writers: Writer[]; ledger: Ledger } {
  const chance = mulberry(seed);
  const ledger = newLedger();
  const writers = ['a', 'b', 'c'].map((name) => new Writer(name, start, chance, ledger));
  const any = () => writers[Math.floor(chance() * 3)]!;
  for (let act = 0; act < ACTS * 3; act++) {
    const deed = DEEDS[Math.floor(chance() * DEEDS.length)]!;
    if (deed === 'sync') sync(any().doc, any().doc);
    else any()[deed]();
  }
  for (let round = 0; round < 2; round++) for (const a of writers) for (const b of writers) sync(a.doc, b.doc);
  return { writers, ledger };
}

test(`three writers, ${RUNS} random runs: no word lost or doubled, no id twice, replicas agree`, () => {
  let [letters, acts] = [0, 0];
  const bad: string[] = [];
  for (let seed = 1; seed <= RUNS; seed++) {
    const { writers, ledger } = run(seed);
    const [first, ...others] = writers.map((one) => one.doc);
    const reading = readDraft(first!);
    for (const other of others) expect(readDraft(other), `seed ${seed}`).toEqual(reading);
    const ids = orderedSteps(first!).map((one) => one.id);
    expect(new Set(ids).size, `seed ${seed}: an id twice`).toBe(ids.length);
    const shown = [...rowsOf(first!, 'steps')].filter(([, fields]) => !fields.get('gone')).length;
    expect(ids.length, `seed ${seed}: every step that is not removed stands somewhere`).toBe(shown);
    const found = lettersOf(first!);
    for (const [letter, home] of ledger.typed) {
      const at = found.get(letter) ?? [];
      if (at.length === 0 && !ledger.waived.has(letter)) bad.push(`seed ${seed}: ${letter} lost from ${home.step}`);
      if (at.length > 1) bad.push(`seed ${seed}: ${letter} doubled`);
      if (at.some((one) => one.step !== home.step || one.field !== home.field))
        bad.push(`seed ${seed}: ${letter} elsewhere`);
    }
    letters += ledger.typed.size;
    acts += ACTS * 3;
  }
  expect(bad).toEqual([]);
  expect(letters).toBeGreaterThan(RUNS * 50);
  expect(acts).toBe(RUNS * ACTS * 3);
}, 240_000);
