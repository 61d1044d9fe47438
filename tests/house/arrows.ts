// Who may import whom, as the design has it: whole rows, with what each folder says aloud.
const PURE = [
  'base',
  'units',
  'air',
  'gate',
  'aircraft',
  'envelope',
  'policy',
  'library',
  'procedure',
  'document',
  'file',
  'mode',
  'flight',
  'diff',
  'approval',
  'check',
  'print',
] as const;
const pureBut = (...out: readonly string[]) => PURE.filter((folder) => !out.includes(folder));

export const ARROWS: Readonly<Record<string, { may: readonly string[]; says: string }>> = {
  base: { may: [], says: 'base knows no word of the trade' },
  units: { may: ['base'], says: 'units stand on base alone' },
  air: { may: ['base', 'units'], says: 'air is physics only' },
  gate: { may: ['base', 'units'], says: 'gate asks for values through a function; it knows no aircraft' },
  aircraft: { may: ['base', 'units', 'air', 'gate'], says: 'aircraft holds one type; it knows no procedure' },
  envelope: {
    may: ['base', 'units', 'air', 'gate', 'aircraft'],
    says: 'envelope proves any condition over any domain; it knows no procedure',
  },
  policy: { may: ['base', 'units'], says: 'policy is values with a version' },
  library: { may: ['base', 'units', 'gate', 'aircraft'], says: 'library is what many procedures share' },
  procedure: {
    may: ['base', 'units', 'gate', 'aircraft', 'library'],
    says: 'procedure does not know where it came from',
  },
  document: {
    may: ['base', 'units', 'gate', 'aircraft', 'library', 'policy', 'procedure'],
    says: 'document and file alone read stored content',
  },
  file: {
    may: ['base', 'units', 'gate', 'aircraft', 'library', 'policy', 'procedure'],
    says: 'document and file alone read stored content',
  },
  mode: {
    may: ['base', 'units', 'gate', 'aircraft', 'envelope', 'procedure'],
    says: 'mode explores the table and the steps',
  },
  flight: {
    may: ['base', 'units', 'air', 'gate', 'aircraft', 'envelope', 'policy', 'procedure', 'mode'],
    says: 'flight flies what the others describe',
  },
  diff: {
    may: ['base', 'units', 'gate', 'aircraft', 'library', 'procedure'],
    says: 'diff compares content; it knows no approval',
  },
  approval: { may: ['base'], says: 'approval signs bytes; it does not know what a procedure is' },
  check: {
    may: pureBut('document', 'file', 'check', 'print'),
    says: 'check takes facts as values; rules never import rules',
  },
  print: { may: pureBut('document', 'file', 'print'), says: 'print sets what the others found' },
  server: {
    may: PURE,
    says: 'server is alone with Prisma, NextAuth and the environment; it knows no socket and no screen',
  },
  collab: { may: ['base', 'document', 'server'], says: 'collab carries edits; it decides nothing' },
  cli: { may: PURE, says: 'cli needs no server' },
  boot: { may: ['server', 'collab', 'base'], says: 'boot starts things' },
};

export const PURE_FOLDERS: readonly string[] = PURE;
