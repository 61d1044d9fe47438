// Steps on the clipboard: JSON for another draft, readable text for everything else. A clipboard is input from outside, so
// what comes in is read field by field and hostile keys never reach the draft.
import * as Y from 'yjs';
import { err, ok, type Result } from '../base/result.ts';
import { STEPS } from './limits.ts';
import { rowsOf } from './model.ts';
import { readStep } from './read.ts';
import { makeRow, type Row, textsOf } from './row.ts';

export const STEPS_TYPE = 'application/x-cuewright-steps+json';

export const writeClipboard = (rows: readonly Row[]): string => JSON.stringify({ steps: rows });

/** Of one paste of steps: well within one change of the draft. */
const PASTE_CHARACTERS = 500_000;
const KEY = /^[a-zA-Z][a-zA-Z0-9.]{0,40}$/;
/** Keys with a meaning of their own to JavaScript, and those that say where a row stands. */
const REFUSED = new Set(['__proto__', 'constructor', 'prototype', 'place', 'gone']);

/** Rows to paste, or a sentence why they can't be. Keys that this version doesn't know are kept. */
export function readClipboard(text: string): Result<readonly Row[], string> {
  if (text.length > PASTE_CHARACTERS) return err('This is too much for one paste. Paste it in parts.');
  const steps = parsed(text);
  if (!Array.isArray(steps) || steps.length === 0) return err('The clipboard holds no steps.');
  if (steps.length > STEPS.most) return err(STEPS.says);
  const problems: string[] = [];
  const rows = steps.map((step: unknown, i): Row => {
    const entries = Object.entries(typeof step === 'object' && step ? step : {});
    const row = Object.fromEntries(entries.filter(([key]) => KEY.test(key) && !REFUSED.has(key)));
    const sound = { ...row, id: String(row.id ?? '').slice(0, 100) };
    problems.push(...problemsOf(sound, `Step ${i + 1}`));
    return sound;
  });
  return problems.length > 0 ? err(`These steps can't be pasted. ${problems[0]}`) : ok(rows);
}

function parsed(text: string): unknown {
  try {
    return (JSON.parse(text) as { steps?: unknown } | null)?.steps;
  } catch {
    return null;
  }
}

/** Made in a draft of its own and read as any step is: what would be refused there is refused here. */
function problemsOf(row: Row, where: string): string[] {
  const wrong = textsOf('steps').find((key) => row[key] !== undefined && typeof row[key] !== 'string');
  if (wrong) return [`${where}: ${wrong} is not text.`];
  const notices = Array.isArray(row.before) ? row.before : row.before === undefined ? [] : [null];
  if (!notices.every((one) => typeof one?.kind === 'string' && typeof one?.text === 'string')) {
    return [`${where}: before is not a list of notices.`];
  }
  const doc = new Y.Doc();
  makeRow(doc, 'steps', { ...row, id: 'pasted' }, { parent: null, rank: 'a0' }, false);
  const problems: string[] = [];
  readStep('pasted', rowsOf(doc, 'steps').get('pasted')!, problems, where);
  doc.destroy();
  return problems;
}

/** One line a step, its parts apart by tabs, as a spreadsheet or a letter takes them. */
export function readableText(rows: readonly Row[]): string {
  const word = (row: Row, key: string) => (typeof row[key] === 'string' ? row[key] : '');
  return rows
    .map((row) => {
      const act = ['verb', 'object', 'value'].map((key) => word(row, key)).filter(Boolean);
      const said = ['say', 'reply'].map((key) => word(row, key)).filter(Boolean);
      const parts = [word(row, 'cue'), word(row, 'who'), act.join(' '), said.map((one) => `"${one}"`).join(' ')];
      return parts.join('\t').trimEnd();
    })
    .join('\n');
}
