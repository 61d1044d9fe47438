// @vitest-environment jsdom
// The notes editor on a real draft: what is typed and marked reaches the draft as notices, and undo is the person's own.
import type { Editor } from '@tiptap/react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test } from 'vitest';
import * as Y from 'yjs';
import { NotesEditor } from '../../app/(house)/desk/_draft/notes-editor.tsx';
import { addNotice, insertAfter, setField } from '../../lib/document/edit.ts';
import { History } from '../../lib/document/history.ts';
import { type Hand, noticesOf } from '../../lib/document/model.ts';
import { noticeSchema } from '../../lib/document/notice-schema.ts';
import { readNotices } from '../../lib/document/notices.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import { someProcedure } from './arbitrary-procedure.ts';
import { mulberry } from './writers.ts';

let doc: Y.Doc;
let hand: Hand;
let history: History;
let id: string;
let root: Root;
let editor: Editor;
const holder = () => ({ in: 'steps', id }) as const;
const notices = () => noticesOf(doc, holder())!;
const stored = () => readNotices(notices()).notices;

beforeEach(async () => {
  let made = 0;
  doc = new Y.Doc();
  Y.applyUpdate(doc, newDraftDoc({ ...someProcedure(1), steps: [], branches: [] }));
  hand = { words: {}, keys: {}, chance: mulberry(4), newId: () => `n${made++}` };
  history = new History(doc, hand, 0);
  id = insertAfter(doc, hand, null);
  addNotice(doc, hand, holder(), 'caution', 'not below _VMM_');
  const frame = document.createElement('div');
  document.body.append(frame);
  root = createRoot(frame);
  editor = await new Promise<Editor>((ready) => {
    root.render(<NotesEditor notices={notices()} history={history} label="Notes" onReady={ready} />);
  });
});
afterEach(() => {
  root.unmount();
  document.body.replaceChildren();
});

test('the editor shows the stored notices and stores what is typed, marked and changed in it', () => {
  expect(editor.getHTML()).toBe('<p data-kind="caution">not below <em>VMM</em></p>');
  editor.chain().setTextSelection(1).insertContent('Flap ').run();
  expect(stored()).toEqual([{ kind: 'caution', text: 'Flap not below _VMM_' }]);
  editor.chain().setTextSelection({ from: 1, to: 5 }).toggleMark('strong').run();
  editor.commands.updateAttributes('notice', { kind: 'warning' });
  expect(stored()).toEqual([{ kind: 'warning', text: '**Flap** not below _VMM_' }]);
  editor.chain().focus('end').splitBlock().insertContent('second').run();
  expect(stored()).toHaveLength(2);
});

test('what another types is shown, and undo takes back this person alone, over words and values alike', () => {
  editor.chain().setTextSelection(1).insertContent('Flap ').run();
  const other = new Y.Doc();
  Y.applyUpdate(other, Y.encodeStateAsUpdate(doc));
  const text = (noticesOf(other, holder())!.get(0) as Y.XmlElement).get(0) as Y.XmlText;
  text.insert(text.length, ' today');
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(other), 'another');
  expect(editor.getText()).toBe('Flap not below VMM today');
  setField(doc, hand, holder(), 'who', 'PM');
  history.undo();
  expect(editor.getText()).toBe('Flap not below VMM today');
  history.undo();
  expect(editor.getText()).toBe('not below VMM today');
  history.redo();
  expect(editor.getText()).toBe('Flap not below VMM today');
});

test('an editor that goes does not take the undo with it', () => {
  editor.chain().setTextSelection(1).insertContent('Flap ').run();
  root.render(null);
  history.undo();
  expect(stored()).toEqual([{ kind: 'caution', text: 'not below _VMM_' }]);
});

test('hostile HTML pasted into notes leaves words and the two marks', () => {
  editor.commands.setContent(
    '<script>alert(1)</script><h1 onclick="x()">Stop</h1><p><b>now</b><img src=x onerror=y></p>',
  );
  expect(editor.getHTML()).not.toMatch(/script|onclick|img|h1/);
  expect(stored().map((one) => one.text)).toContain('**now**');
});

test('the schema holds when a list of notices, or a notice, is empty', () => {
  const schema = noticeSchema();
  schema.node('doc', null, []).check();
  schema.node('doc', null, [schema.node('notice', { kind: 'note' }, [])]).check();
});
