// A contenteditable="plaintext-only" cell bound to a Y.Text. React renders the cell empty and never writes its text; this
// does, with insertData and deleteData, which leave the caret where it belongs while others type.
import * as Y from 'yjs';
import { FIELD_CHARACTERS } from '../../../../lib/document/limits.ts';
import { spliceOf } from './splice.ts';

export type CellOptions = {
  /** Origin of what is typed here: the hand's `words`. */
  readonly words: object;
  /** Called when a paste or a key would make the field too long; nothing was taken over. */
  readonly refused?: (sentence: string) => void;
  /** Called with the caret as it moves, and with null when it leaves. */
  readonly caret?: (at: number | null) => void;
};

type Composing = { readonly before: string; readonly marks: readonly Y.RelativePosition[]; changed: boolean };

/** Binds until the returned function is called. Line breaks in what is typed or pasted become spaces. */
export function bindText(
  cell: HTMLElement,
  text: Y.Text,
  { words, refused, caret: tellCaret }: CellOptions,
): () => void {
  const page = cell.ownerDocument;
  const node = page.createTextNode(text.toString());
  cell.replaceChildren(node);
  let composing: Composing | null = null;
  /** While this cell itself writes: then it shows what it wrote, or puts it right afterwards. */
  let writing = false;

  const offset = (): number => {
    const selection = page.getSelection();
    return selection?.focusNode === node ? selection.focusOffset : (cell.textContent ?? '').length;
  };
  const putCaret = (at: number) => {
    if (page.activeElement === cell) page.getSelection()?.collapse(node, Math.min(at, node.length));
  };
  const show = (content: string, caret: number) => {
    if (node.data !== content) node.data = content;
    if (cell.childNodes.length !== 1 || cell.firstChild !== node) cell.replaceChildren(node);
    putCaret(caret);
  };
  const write = (at: number, cut: number, put: string): boolean => {
    if (put.length > cut && text.length - cut + put.length > FIELD_CHARACTERS.most) {
      refused?.(FIELD_CHARACTERS.says);
      return false;
    }
    writing = true;
    try {
      text.doc!.transact(() => {
        text.delete(at, Math.min(cut, text.length - at));
        text.insert(at, put);
      }, words);
    } finally {
      writing = false;
    }
    return true;
  };

  const push = () => {
    const before = text.toString();
    const caret = offset();
    const after = (cell.textContent ?? '').replaceAll(/[\r\n]/g, ' ');
    const { at, cut, put } = spliceOf(before, after, caret);
    const taken = before === after || write(at, cut, put);
    // The browser may have put its own node there, or a line break: ours comes back.
    if (!taken) show(text.toString(), at + cut);
    else if (node.data !== text.toString() || cell.firstChild !== node || cell.childNodes.length !== 1) {
      show(text.toString(), caret);
    }
  };
  const compose = () => {
    const before = text.toString();
    const marks = Array.from({ length: before.length + 1 }, (_, i) => Y.createRelativePositionFromTypeIndex(text, i));
    composing = { before, marks, changed: false };
  };
  const composed = () => {
    const was = composing;
    composing = null;
    if (!was?.changed) return push();
    // Others wrote meanwhile: what was composed goes to where its place is now, and theirs is shown.
    const { at, cut, put } = spliceOf(was.before, cell.textContent ?? '', offset());
    const now = Y.createAbsolutePositionFromRelativePosition(was.marks[at]!, text.doc!)?.index ?? text.length;
    write(now, cut, put.replaceAll(/[\r\n]/g, ' '));
    show(text.toString(), now + put.length);
  };
  const paste = (event: ClipboardEvent) => {
    const pasted = event.clipboardData?.getData('text/plain') ?? '';
    event.preventDefault();
    const selection = page.getSelection();
    const ends = [selection?.anchorNode, selection?.focusNode].every((end) => end === node)
      ? [selection!.anchorOffset, selection!.focusOffset].sort((a, b) => a - b)
      : [0, node.length];
    const [from, to] = node.length === 0 ? [0, 0] : (ends as [number, number]);
    const put = pasted.replaceAll(/\s*[\r\n]+\s*/g, ' ');
    if (write(from, to - from, put)) show(text.toString(), from + put.length);
  };
  const drop = (event: DragEvent) => event.preventDefault();
  const changed = (event: Y.YTextEvent) => {
    if (writing) return;
    if (composing) {
      composing.changed = true;
      return;
    }
    if (cell.firstChild !== node || cell.childNodes.length !== 1) cell.replaceChildren(node);
    let at = 0;
    for (const part of event.delta) {
      if (part.retain) at += part.retain;
      else if (part.delete) node.deleteData(at, part.delete);
      else if (typeof part.insert === 'string') {
        node.insertData(at, part.insert);
        at += part.insert.length;
      }
    }
  };
  const moved = () => {
    if (page.activeElement === cell) tellCaret?.(offset());
  };

  const off = new AbortController();
  const on = { signal: off.signal };
  cell.addEventListener('input', () => !composing && push(), on);
  cell.addEventListener('compositionstart', compose, on);
  cell.addEventListener('compositionend', composed, on);
  cell.addEventListener('paste', paste, on);
  cell.addEventListener('drop', drop, on);
  cell.addEventListener('blur', () => tellCaret?.(null), on);
  page.addEventListener('selectionchange', moved, on);
  text.observe(changed);
  return () => {
    off.abort();
    text.unobserve(changed);
  };
}
