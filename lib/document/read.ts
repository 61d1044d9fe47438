import * as Y from 'yjs';
import {
  type Branch,
  CLASSES,
  FLAGS,
  type Notice,
  PHASES,
  type Procedure,
  type ProcedureId,
  ROLES,
  type StateLine,
  type Step,
  type StepId,
  VERBS,
} from '../procedure/procedure.ts';
import { BRANCHES, NOTICES, STEP_CHARACTERS, STEPS } from './limits.ts';
import { type Fields, metaOf, rowsOf, SCHEMA, STEP_TEXTS } from './model.ts';
import { readNotices } from './notices.ts';
import { isRank, ordered, parentOf, placeOf } from './order.ts';
import * as shape from './shape.ts';

export type Reading = {
  readonly procedure: Procedure;
  /** Sentences, one a defect of the stored shape. A draft with any is shown but not frozen. */
  readonly problems: readonly string[];
};

/**
 * The procedure that a draft holds, in reading order, hidden rows left out. Never throws whatever is stored; what doesn't fit
 * is read as "not stated" and named in `problems`, which the server asks for before it freezes a candidate.
 */
export function readDraft(doc: Y.Doc): Reading {
  const problems: string[] = [];
  const meta = readMeta(metaOf(doc), problems);
  const stored = metaOf(doc).get('schema');
  if (stored !== SCHEMA)
    problems.push(`The draft is stored in version ${String(stored)}; this program knows ${SCHEMA}.`);
  const steps = stepsIn(doc, null, problems);
  const branches = ordered(doc, 'branches').map((id) => {
    const fields = rowsOf(doc, 'branches').get(id)!;
    return { ...readBranch(id, fields, problems), steps: stepsIn(doc, id, problems) };
  });
  const count = branches.reduce((sum, branch) => sum + branch.steps.length, steps.length);
  if (count > STEPS.most) problems.push(`The draft has ${count} steps. ${STEPS.says}`);
  if (branches.length > BRANCHES.most) problems.push(`The draft has ${branches.length} branches. ${BRANCHES.says}`);
  for (const list of ['steps', 'branches'] as const) {
    for (const [id, fields] of rowsOf(doc, list)) {
      if (!(fields instanceof Y.Map))
        problems.push(`${list === 'steps' ? 'Step' : 'Branch'} ${id} is not a map of fields.`);
    }
  }
  return { procedure: { ...meta, steps, branches }, problems };
}

function stepsIn(doc: Y.Doc, parent: string | null, problems: string[]): Step[] {
  return ordered(doc, 'steps', parent).map((id, i) => {
    const fields = rowsOf(doc, 'steps').get(id)!;
    const where = `Step ${i + 1}${parent === null ? '' : ' of a branch'}`;
    const place = placeOf(fields);
    if (!isRank(place.rank)) problems.push(`${where} has no place in the order. Move it once.`);
    if (parentOf(doc, fields) !== place.parent) {
      problems.push(`${where} stood in a branch that was removed. Move it to where it belongs, or remove it.`);
    }
    return readStep(id, fields, problems, where);
  });
}

const text = (fields: Fields, key: string, complain: shape.Complain): string => {
  const value = fields.get(key);
  if (value instanceof Y.Text) return shape.string(value.toString(), key, complain);
  complain(key, 'is not typed text');
  return typeof value === 'string' ? value : '';
};

function before(fields: Fields, complain: shape.Complain): readonly Notice[] {
  const stored = fields.get('before');
  if (!(stored instanceof Y.XmlFragment)) {
    complain('before', 'is not a list of notices');
    return [];
  }
  const { notices, problems } = readNotices(stored);
  for (const problem of problems) complain('before', problem);
  if (notices.length > NOTICES.most) complain('before', `is too long. ${NOTICES.says}`);
  for (const notice of notices) shape.string(notice.text, 'before', complain);
  return notices;
}

/** One step. `problems` takes a sentence for each field that doesn't fit. */
export function readStep(id: string, fields: Fields, problems: string[] = [], where = 'The step'): Step {
  const complain: shape.Complain = (key, sentence) => problems.push(`${where}: ${key} ${sentence}.`);
  const get = (key: string) => fields.get(key);
  const word = (key: string) => shape.string(get(key), key, complain);
  const role = (key: string) => shape.oneOf(ROLES, get(key), key, complain);
  const mode = (key: string) => shape.mode(get(key), key, complain);
  const texts = Object.fromEntries(STEP_TEXTS.map((key) => [key, text(fields, key, complain)]));
  const step = {
    ...(texts as Pick<Step, (typeof STEP_TEXTS)[number]>),
    id: id as StepId,
    label: word('label'),
    copiedFrom: word('copiedFrom'),
    family: word('family'),
    orderBy: role('orderBy'),
    who: role('who'),
    verb: shape.oneOf(VERBS, get('verb'), 'verb', complain),
    sayBy: role('sayBy'),
    replyBy: role('replyBy'),
    expect: {
      thrust: mode('expect.thrust'),
      lateral: mode('expect.lateral'),
      vertical: mode('expect.vertical'),
      armed: shape.armed(get('expect.armed'), 'expect.armed', complain),
    },
    checkBy: word('checkBy'),
    before: before(fields, complain),
    flags: shape.someOf(FLAGS, get('flags'), 'flags', complain),
    branch: shape.branches(get('branch'), 'branch', complain),
  };
  const characters = Object.values(texts).join('').length + step.before.reduce((sum, one) => sum + one.text.length, 0);
  if (characters > STEP_CHARACTERS.most) problems.push(`${where} is too long. ${STEP_CHARACTERS.says}`);
  return step;
}

/** One branch, without its steps. */
export function readBranch(id: string, fields: Fields, problems: string[] = []): Omit<Branch, 'steps'> {
  const complain: shape.Complain = (key, sentence) => problems.push(`Branch: ${key} ${sentence}.`);
  return {
    id,
    label: shape.string(fields.get('label'), 'label', complain),
    title: text(fields, 'title', complain),
    when: text(fields, 'when', complain),
    before: before(fields, complain),
    joins: text(fields, 'joins', complain),
    note: text(fields, 'note', complain),
  };
}

/** The procedure's own fields, without steps and branches. */
export function readMeta(meta: Fields, problems: string[] = []): Omit<Procedure, 'steps' | 'branches'> {
  const complain: shape.Complain = (key, sentence) => problems.push(`The procedure's ${key} ${sentence}.`);
  const word = (key: string) => shape.string(meta.get(key), key, complain);
  const words = (key: string) => shape.strings(meta.get(key), key, complain);
  const range = (key: string) => shape.range(meta.get(key), key, complain);
  const line = (at: 'entry' | 'exit'): StateLine => ({
    flaps: words(`${at}.flaps`),
    gear: shape.oneOf(['up', 'down'], meta.get(`${at}.gear`), `${at}.gear`, complain),
    speed: text(meta, `${at}.speed`, complain),
    autopilot: word(`${at}.autopilot`),
    thrust: words(`${at}.thrust`),
    lateral: words(`${at}.lateral`),
    vertical: words(`${at}.vertical`),
    armed: shape.armedList(meta.get(`${at}.armed`), `${at}.armed`, complain),
    selectedAltitude: text(meta, `${at}.selectedAltitude`, complain),
    also: text(meta, `${at}.also`, complain),
  });
  return {
    id: word('id') as ProcedureId,
    title: text(meta, 'title', complain),
    class: shape.oneOf(CLASSES, meta.get('class'), 'class', complain),
    phases: shape.someOf(PHASES, meta.get('phases'), 'phases', complain),
    effectivity: {
      type: word('effectivity.type'),
      standards: words('effectivity.standards'),
      note: text(meta, 'effectivity.note', complain),
    },
    owner: word('owner'),
    envelope: {
      weight: range('envelope.weight'),
      elevation: range('envelope.elevation'),
      temperature: range('envelope.temperature'),
      wind: range('envelope.wind'),
      level: range('envelope.level'),
      detents: words('envelope.detents'),
    },
    weightLimit: text(meta, 'weightLimit', complain),
    entry: line('entry'),
    exit: line('exit'),
    leavesTo: words('leavesTo'),
    rationale: text(meta, 'rationale', complain),
  };
}
