// Steps, branches and state lines: nested in the file, flat in the procedure.
import type { Branch, Expect, ExpectedArmed, Notice, StateLine, Step, StepId } from '../procedure/procedure.ts';
import type { BranchFormat, StateFormat, StepFormat } from './procedure-format.ts';
import { stated } from './stated.ts';

export function readStep(file: StepFormat): Step {
  return {
    id: file.id as StepId,
    label: file.label ?? '',
    copiedFrom: file['copied-from'] ?? '',
    family: file.family ?? '',
    cue: file.cue ?? '',
    only: file.only ?? '',
    orderBy: file.order?.who ?? '',
    orderWords: file.order?.say ?? '',
    who: file.who ?? '',
    verb: file.do?.verb ?? '',
    object: file.do?.object ?? '',
    value: file.do?.value ?? '',
    sayBy: file['said-by'] ?? '',
    say: file.say ?? '',
    replyBy: file.reply?.who ?? '',
    reply: file.reply?.say ?? '',
    replyAct: file.reply?.act ?? '',
    expect: readExpect(file.expect),
    expectNote: file['expect-note'] ?? '',
    checkBy: file.check?.by ?? '',
    checkSees: file.check?.sees ?? '',
    checkWithin: file.check?.within ?? '',
    checkIfNot: file.check?.['if-not'] ?? '',
    before: file.before ?? [],
    note: file.note ?? '',
    why: file.why ?? '',
    source: file.source ?? '',
    flags: file.flags ?? [],
    branch: file.branch ?? [],
  };
}

export function writeStep(step: Step): unknown {
  return stated({
    id: step.id,
    label: step.label,
    cue: step.cue,
    only: step.only,
    order: stated({ who: step.orderBy, say: step.orderWords }),
    before: step.before.map(writeNotice),
    who: step.who,
    do: stated({ verb: step.verb, object: step.object, value: step.value }),
    say: step.say,
    'said-by': step.sayBy,
    reply: stated({ who: step.replyBy, say: step.reply, act: step.replyAct }),
    expect: writeExpect(step.expect),
    'expect-note': step.expectNote,
    check: stated({ by: step.checkBy, sees: step.checkSees, within: step.checkWithin, 'if-not': step.checkIfNot }),
    note: step.note,
    why: step.why,
    source: step.source,
    flags: step.flags,
    branch: step.branch.map(({ when, to }) => ({ when, to })),
    'copied-from': step.copiedFrom,
    family: step.family,
  });
}

const writeNotice = ({ kind, text }: Notice): unknown => ({ kind, text });

function readExpect(file: StepFormat['expect']): Expect {
  if (file === 'same') return { thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' };
  return {
    thrust: file?.thrust ?? '',
    lateral: file?.lateral ?? '',
    vertical: file?.vertical ?? '',
    armed: file?.armed ?? null,
  };
}

function writeExpect({ thrust, lateral, vertical, armed }: Expect): unknown {
  if ([thrust, lateral, vertical, armed].every((part) => part === 'same')) return 'same';
  return stated({ thrust: kept(thrust), lateral: kept(lateral), vertical: kept(vertical), armed: keptArmed(armed) });
}

/** An empty list is a statement here: no word fits, or nothing is armed. */
const kept = (words: unknown): unknown => (Array.isArray(words) ? { said: words } : words);
const keptArmed = (armed: ExpectedArmed): unknown => (armed === null || armed === 'same' ? armed : { said: armed });

export function readBranch(file: BranchFormat): Branch {
  return {
    id: file.id,
    label: file.label ?? '',
    title: file.title ?? '',
    when: file.when ?? '',
    before: file.before ?? [],
    steps: file.steps.map(readStep),
    joins: file.joins ?? '',
    note: file.note ?? '',
  };
}

export function writeBranch(branch: Branch): unknown {
  return stated({
    id: branch.id,
    label: branch.label,
    title: branch.title,
    when: branch.when,
    before: branch.before.map(writeNotice),
    steps: { said: branch.steps.map(writeStep) },
    joins: branch.joins,
    note: branch.note,
  });
}

const list = (words: string | readonly string[] | undefined): readonly string[] =>
  words === undefined ? [] : typeof words === 'string' ? [words] : words;

export function readState(file: StateFormat): StateLine {
  return {
    flaps: list(file.flaps),
    gear: file.gear ?? '',
    speed: file.speed ?? '',
    autopilot: file.autopilot ?? '',
    thrust: list(file.thrust),
    lateral: list(file.lateral),
    vertical: list(file.vertical),
    armed: file.armed ?? null,
    selectedAltitude: file['selected-altitude'] ?? '',
    also: file.also ?? '',
  };
}

export function writeState(state: StateLine): unknown {
  return stated({
    flaps: state.flaps,
    gear: state.gear,
    speed: state.speed,
    autopilot: state.autopilot,
    thrust: state.thrust,
    lateral: state.lateral,
    vertical: state.vertical,
    armed: state.armed === null ? null : { said: state.armed },
    'selected-altitude': state.selectedAltitude,
    also: state.also,
  });
}
