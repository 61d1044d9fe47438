// @vitest-environment jsdom
// Which rows are drawn again when something changes: those that it touched.
import { act } from 'react';
import { createRoot } from 'react-dom/client';
import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { Choice } from '../../app/(house)/desk/_draft/choose-steps.ts';
import { DraftView } from '../../app/(house)/desk/_draft/draft-view.ts';
import { Peers } from '../../app/(house)/desk/_draft/peers.ts';
import {
  DraftContext,
  type OpenDraft,
  useCell,
  useOrder,
  usePeersAt,
  useStep,
} from '../../app/(house)/desk/_draft/use-draft.ts';
import { insertRows, move, setField, setText } from '../../lib/document/edit.ts';
import type { Hand } from '../../lib/document/model.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import { someProcedure } from './arbitrary-procedure.ts';
import { mulberry } from './writers.ts';

/** What a provider's awareness is to the hooks, without a network. */
class Tabs {
  readonly clientID = 1;
  readonly states = new Map<number, Record<string, unknown>>();
  #told = new Set<() => void>();
  getStates = () => this.states;
  on = (_: 'change', told: () => void) => void this.#told.add(told);
  off = (_: 'change', told: () => void) => void this.#told.delete(told);
  show(tab: number, state: Record<string, unknown>) {
    this.states.set(tab, state);
    for (const told of this.#told) told();
  }
}

test('300 steps: a key, a choice and a caret draw one row each, a move draws the list and no row', async () => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  const doc = new Y.Doc();
  Y.applyUpdate(doc, newDraftDoc({ ...someProcedure(1), steps: [], branches: [] }));
  let made = 0;
  const hand: Hand = { words: {}, keys: {}, chance: mulberry(1), newId: () => `n${made++}` };
  const ids = insertRows(
    doc,
    hand,
    'steps',
    Array.from({ length: 300 }, () => ({})),
    { parent: null, after: null },
  );
  const view = new DraftView(doc);
  const tabs = new Tabs();
  const peers = new Peers(tabs);
  const open = { doc, hand, view, peers, choice: new Choice(view, hand), point: () => {} } as unknown as OpenDraft;
  const drawn: string[] = [];

  function Row({ id }: { id: string }) {
    drawn.push(id);
    const cell = useCell<HTMLSpanElement>({ in: 'steps', id }, 'object');
    const at = usePeersAt(id);
    return (
      <p>
        {useStep(id)?.who}
        <span ref={cell} id={id} />
        {at.map((peer) => peer.person.name)}
      </p>
    );
  }
  const rows = new Map(ids.map((id) => [id, <Row key={id} id={id} />]));
  function List() {
    drawn.push('list');
    return useOrder().steps.map(({ id }) => rows.get(id));
  }
  const frame = document.body.appendChild(document.createElement('div'));
  const root = createRoot(frame);
  await act(() =>
    root.render(
      <DraftContext value={open}>
        <List />
      </DraftContext>,
    ),
  );
  const after = async (deed: () => void) => {
    drawn.length = 0;
    await act(deed);
    return [...drawn];
  };
  const [first, second] = ids as [string, string];
  const on = { in: 'steps', id: first } as const;
  expect(await after(() => setText(doc, hand, on, 'object', 0, 0, 'gear'))).toEqual([first]);
  expect(document.getElementById(first)?.textContent).toBe('gear');
  expect(await after(() => setField(doc, hand, on, 'who', 'PM'))).toEqual([first]);
  const person = { id: 'pe-2', name: 'Ben', initials: 'B' };
  const shown = () => tabs.show(2, { person, at: { row: second, field: 'cue', caret: 0 } });
  expect(await after(shown)).toEqual([second]);
  expect(await after(shown)).toEqual([]);
  expect(await after(() => move(doc, hand, 'steps', [first], { parent: null, after: second }))).toContain('list');
  expect(drawn.filter((id) => id !== 'list' && id !== first)).toEqual([]);
  expect(frame.querySelectorAll('span')[1]?.id).toBe(first);
  await act(() => root.unmount());
});
