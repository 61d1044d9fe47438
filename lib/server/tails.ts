// Tails and their dated options, inside a transaction: which of them a text is for at a time.
import type { Effectivity } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';

export type TailLine = {
  readonly registration: string;
  readonly fleet: string;
  readonly type: string;
  /** Guidance standard held at the time asked for; '' when none was entered. */
  readonly standard: string;
};

/** All tails with the standard that each held at `at`. */
export async function tailLines(tx: Tx, operatorId: string, at: Date): Promise<TailLine[]> {
  const tails = await tx.tail.findMany({
    where: { operatorId },
    orderBy: { registration: 'asc' },
    include: {
      fleet: true,
      options: { where: { option: 'standard', heldFrom: { lte: at } }, orderBy: { heldFrom: 'desc' }, take: 1 },
    },
  });
  return tails.map((tail) => ({
    registration: tail.registration,
    fleet: tail.fleet.name,
    type: tail.fleet.type,
    standard: tail.options[0]?.value ?? '',
  }));
}

export async function tailAt(tx: Tx, operatorId: string, registration: string, at: Date): Promise<TailLine> {
  const tail = (await tailLines(tx, operatorId, at)).find((line) => line.registration === registration);
  if (!tail) throw new Refused('unknown');
  return tail;
}

/** An empty list of standards means all of them; a tail without a standard is in no list. */
export const isFor = (effectivity: Effectivity, tail: TailLine): boolean =>
  effectivity.type === tail.type &&
  (effectivity.standards.length === 0 || effectivity.standards.includes(tail.standard));

export async function tailsFor(tx: Tx, operatorId: string, effectivity: Effectivity, at: Date): Promise<string[]> {
  const tails = await tailLines(tx, operatorId, at);
  return tails.filter((tail) => isFor(effectivity, tail)).map((tail) => tail.registration);
}
