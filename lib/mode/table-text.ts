// The whole mode table as texts in cells, for people to edit, and back. Reading never throws away what was typed: a cell that
// can't be read gives a sentence, and there is no table until every cell can.
import { type ModeSet, modeSet } from '../aircraft/mode-set.ts';
import { parseGate } from '../gate/parse.ts';
import {
  type KnownWords,
  known,
  NOTATION,
  partsOf,
  readArmedGuard,
  readArmedLateral,
  readArmedVertical,
  readGuard,
  readPredicates,
  readRel,
  readThrust,
  readVertical,
  readWord,
  type Say,
} from './cell-text.ts';
import { type CaseCell, casesOf } from './cell-words.ts';
import { AXES } from './layout.ts';

export type Cells = Readonly<Record<string, string>>;
/** `key` is the row's for as long as it is edited, whatever its cells say. */
export type TextRow = { readonly key: string; readonly cells: Cells };
/** A rule has one case or several; each is a guard and what follows from it. */
export type TextRule = TextRow & { readonly cases: readonly TextRow[] };
export const ROW_LISTS = ['start', 'words', 'standards', 'predicates', 'controls', 'environment'] as const;
export type RowList = (typeof ROW_LISTS)[number];
export type TableText = Readonly<Record<RowList, readonly TextRow[]>> & {
  /** One row: the words of each axis and lists of them. */
  readonly lists: TextRow;
  readonly rules: readonly TextRule[];
};
export type CellProblem = { readonly row: string; readonly cell: string; readonly says: string };

/** Lists of words that must be there, and those that may be left empty. */
export const AXIS_LISTS = ['thrust', 'lateral', 'vertical', 'armedVertical', 'armedLateral', 'rel', 'phase'] as const;
export const TRAIT_LISTS = {
  climbing: 'vertical',
  descending: 'vertical',
  levels: 'vertical',
  armsAlways: 'vertical',
  manual: 'thrust',
  unprotected: 'thrust',
  reversions: 'rules',
} as const;
export type ListName = (typeof AXIS_LISTS)[number] | keyof typeof TRAIT_LISTS | 'source';

const commas = (words: readonly string[] | undefined): string => (words ?? []).join(', ');
const rows = (list: RowList, all: readonly Cells[]): readonly TextRow[] =>
  all.map((cells, at) => ({ key: `${list}-${at + 1}`, cells }));

export function tableText(modes: ModeSet): TableText {
  const lists = Object.fromEntries([
    ['source', modes.source],
    ...[...AXIS_LISTS, 'climbing', 'descending', 'levels', 'armsAlways', 'unprotected', 'reversions'].map(
      (name) => [name, commas(modes[name as 'thrust'])] as const,
    ),
    ['manual', modes.manual],
  ]) as Cells;
  const said = [...new Set([...Object.keys(modes.spoken), ...Object.keys(modes.targets)])];
  return {
    lists: { key: 'lists', cells: lists },
    start: rows(
      'start',
      modes.initial.map((line) => ({
        ...line,
        armed_vertical: commas(line.armed_vertical),
        armed_lateral: commas(line.armed_lateral),
      })),
    ),
    words: rows(
      'words',
      said.map((word) => ({ word, spoken: modes.spoken[word] ?? '', speed: modes.targets[word] ?? '' })),
    ),
    standards: rows(
      'standards',
      Object.entries(modes.standards).map(([name, says]) => ({ name, says })),
    ),
    predicates: rows(
      'predicates',
      Object.entries(modes.predicates ?? {}).map(([name, text]) => ({ name, text })),
    ),
    controls: rows(
      'controls',
      (modes.controls ?? []).map((one) => ({
        verbs: commas(one.verbs),
        object: one.object,
        value: one.value ?? '',
        rules: commas(one.rules),
      })),
    ),
    environment: rows(
      'environment',
      (modes.environment ?? []).map(({ name, says, rules }) => ({ name, says, rules: commas(rules) })),
    ),
    rules: modes.rules.map((rule, at) => ({
      key: `rules-${at + 1}`,
      cells: { id: rule.id, who: rule.who, event: rule.event, effect: rule.effect },
      cases: casesOf(rule, modes.manual).map((cells, part) => ({ key: `rules-${at + 1}-${part + 1}`, cells })),
    })),
  };
}

export type ReadTable = {
  /** null while some cell can't be read. */
  readonly modes: ModeSet | null;
  readonly problems: readonly CellProblem[];
};

export function readTable(text: TableText): ReadTable {
  const problems: CellProblem[] = [];
  const at =
    (row: string, cell: string): Say =>
    (says) =>
      void problems.push({ row, cell, says });
  const must = (row: TextRow, cell: string, what: string): string => {
    const typed = row.cells[cell]!.trim();
    if (typed === '') at(row.key, cell)(`${what} is missing`);
    return typed;
  };
  const named = (row: TextRow, cell: string, what: string, others: Set<string>): string => {
    const name = must(row, cell, what);
    if (others.has(name) && name !== '') at(row.key, cell)(`"${name}" is there already`);
    if (name.length > LONGEST_WORD) at(row.key, cell)(`at most ${LONGEST_WORD} characters`);
    others.add(name);
    return name;
  };

  const lists = listsOf(text.lists, at);
  const record = (list: RowList, cell: string, what: string): Record<string, string> => {
    const seen = new Set<string>();
    return Object.fromEntries(
      text[list].map((row) => [named(row, 'name', 'the name', seen), must(row, cell, what)] as const),
    );
  };
  const standards = record('standards', 'says', 'what it does');
  if (text.standards.length === 0) at('lists', 'thrust')('at least one guidance standard is needed');
  const predicates = record('predicates', 'text', 'the condition');
  for (const row of text.predicates) {
    const [problem] = row.cells.text!.trim() === '' ? [] : parseGate(row.cells.text!).problems;
    if (problem !== undefined) at(row.key, 'text')(problem.message);
  }
  const words: KnownWords = {
    ...lists,
    armed_vertical: lists.armedVertical,
    armed_lateral: lists.armedLateral,
    manual: text.lists.cells.manual!.trim(),
    standards: Object.keys(standards),
    predicates: Object.keys(predicates),
  };
  const ids = text.rules.map((rule) => rule.cells.id!.trim());
  const seen = new Set<string>();
  const rules = text.rules.map((rule): unknown => {
    const id = named(rule, 'id', 'the number of the rule', seen);
    if (id !== '' && !/^[A-Z]+\d+$/.test(id)) at(rule.key, 'id')('capital letters and then a number, such as T35');
    const heading = {
      id,
      who: rule.cells.who,
      event: must(rule, 'event', 'the event'),
      effect: must(rule, 'effect', 'what it does, in words,'),
    };
    const cases = rule.cases.map((row) => readCase(row, words, at));
    return cases.length === 1 ? { ...heading, ...cases[0] } : { ...heading, any: cases };
  });
  if (rules.length === 0) at('lists', 'thrust')('at least one rule is needed');
  const ruleList = (row: TextRow): readonly string[] =>
    partsOf(row.cells.rules!).map((id) => known(id, ids, 'rule', at(row.key, 'rules')));
  const controls = text.controls.map((row) => {
    const value = row.cells.value!.trim();
    const verbs = partsOf(must(row, 'verbs', 'what the hand does'));
    const raised = ruleList(row);
    if (raised.length === 0) at(row.key, 'rules')('the rules that it raises are missing');
    return { verbs, object: must(row, 'object', 'what is moved'), ...(value !== '' && { value }), rules: raised };
  });
  const surprises = new Set<string>();
  const environment = text.environment.map((row) => ({
    name: named(row, 'name', 'the name', surprises),
    says: must(row, 'says', 'what happens'),
    rules: ruleList(row),
  }));
  const spoken: Record<string, string> = {};
  const targets: Record<string, string> = {};
  const told = new Set<string>();
  const speakable = [...AXIS_LISTS.flatMap((list) => lists[list]), ...ids];
  for (const row of text.words) {
    const word = known(named(row, 'word', 'the word', told), speakable, 'mode', at(row.key, 'word'));
    if (row.cells.spoken!.trim() !== '') spoken[word] = row.cells.spoken!.trim();
    if (row.cells.speed!.trim() !== '') targets[word] = row.cells.speed!.trim();
  }
  const data = {
    source: must(text.lists, 'source', 'where the table comes from'),
    ...lists,
    ...traitsOf(text.lists, lists, ids, at),
    standards,
    spoken,
    initial: text.start.map((row) => startOf(row, words, at)),
    rules,
    ...(text.predicates.length > 0 && { predicates }),
    ...(controls.length > 0 && { controls }),
    ...(environment.length > 0 && { environment }),
    targets,
  };
  if (problems.length > 0) return { modes: null, problems };
  const read = modeSet.safeParse(data);
  if (read.success) return { modes: read.data, problems };
  const rest = read.error.issues.map((issue) => ({
    row: 'lists',
    cell: 'source',
    says: `${issue.path.join('.')}: ${issue.message}`,
  }));
  return { modes: null, problems: rest };
}

const LONGEST_WORD = 30;
type At = (row: string, cell: string) => Say;
type AxisWords = Readonly<Record<(typeof AXIS_LISTS)[number], readonly string[]>>;

function listsOf(row: TextRow, at: At): AxisWords {
  return Object.fromEntries(
    AXIS_LISTS.map((list) => {
      const words = partsOf(row.cells[list]!);
      const say = at('lists', list);
      if (words.length === 0 && !list.startsWith('armed')) say('at least one word is needed');
      for (const [k, word] of words.entries()) {
        if (words.indexOf(word) < k) say(`${word} stands twice`);
        if (/[\s:]/.test(word))
          say(`"${word}": a word of the mode line has no blank and no colon; words are parted by commas`);
        if (NOTATION.includes(word)) say(`"${word}" is a word of the notation itself`);
        if (word.length > LONGEST_WORD) say(`${word} has more than ${LONGEST_WORD} characters`);
      }
      return [list, words] as const;
    }),
  ) as AxisWords;
}

function traitsOf(row: TextRow, lists: AxisWords, ids: readonly string[], at: At) {
  const read = (name: keyof typeof TRAIT_LISTS): readonly string[] => {
    const of = TRAIT_LISTS[name];
    const all = of === 'rules' ? ids : lists[of];
    return partsOf(row.cells[name]!).map((word) => known(word, all, of === 'rules' ? 'rule' : of, at('lists', name)));
  };
  const some = (name: 'levels' | 'unprotected' | 'reversions') => {
    const words = read(name);
    return words.length > 0 ? { [name]: words } : {};
  };
  const manual = read('manual');
  if (manual.length !== 1) at('lists', 'manual')('one word: that of thrust which the guidance leaves alone');
  return {
    climbing: read('climbing'),
    descending: read('descending'),
    armsAlways: read('armsAlways'),
    manual: manual[0] ?? '',
    ...some('levels'),
    ...some('unprotected'),
    ...some('reversions'),
  };
}

function startOf(row: TextRow, words: KnownWords, at: At) {
  const armed = (axis: 'armed_vertical' | 'armed_lateral'): readonly string[] =>
    partsOf(row.cells[axis]!).map((word) => known(word, words[axis], axis.replace('_', ' '), at(row.key, axis)));
  const line = AXES.map(
    (axis) => [axis, known(row.cells[axis]!.trim(), words[axis], axis, at(row.key, axis))] as const,
  );
  return {
    ...Object.fromEntries(line),
    armed_vertical: armed('armed_vertical'),
    armed_lateral: armed('armed_lateral'),
  };
}

function readCase(row: TextRow, words: KnownWords, at: At) {
  const text = (cell: CaseCell): string => row.cells[cell] ?? '';
  const say = (cell: CaseCell): Say => at(row.key, cell);
  const guard = AXES.flatMap((axis) => {
    const asked = readGuard(text(`when.${axis}`), axis, words, say(`when.${axis}`));
    return asked === undefined ? [] : [[axis, asked] as const];
  });
  const armed = (['armed_vertical', 'armed_lateral'] as const).flatMap((axis) => {
    const asked = readArmedGuard(text(`when.${axis}`), axis, words, say(`when.${axis}`));
    return asked === undefined ? [] : [[axis, asked] as const];
  });
  const when = {
    ...Object.fromEntries([...guard, ...armed]),
    ...readPredicates(text('when.is'), words, say('when.is')),
  };
  const effects = {
    ...readThrust(text('then.thrust'), words, say('then.thrust')),
    ...readWord(text('then.lateral'), 'lateral', words, say('then.lateral')),
    ...readVertical(text('then.vertical'), words, say('then.vertical')),
    ...readArmedVertical(text('then.armed_vertical'), words, say('then.armed_vertical')),
    ...readArmedLateral(text('then.armed_lateral'), words, say('then.armed_lateral')),
    ...readRel(text('then.rel'), words, say('then.rel')),
    ...readWord(text('then.phase'), 'phase', words, say('then.phase')),
  };
  return Object.fromEntries([
    ['when', when],
    ['then', effects],
  ]);
}
