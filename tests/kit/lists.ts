// Checklists for tests of the checks that read them.
import type { Checklist } from '../../lib/library/library.ts';
import { houseFacts } from './world.ts';

type Item = Checklist['items'][number];
export const item = (challenge: string, response: string, ...steps: readonly string[]): Item => ({
  challenge,
  response,
  by: 'PF',
  steps,
});

/** The demo operator's library with these lists and no others. */
export const withLists = (...lists: readonly (Partial<Checklist> & Pick<Checklist, 'title' | 'items'>)[]) => ({
  library: {
    ...houseFacts.library!,
    checklists: lists.map(
      (list): Checklist => ({
        id: list.title.toLowerCase().replaceAll(' ', '-'),
        calledBy: 'PF',
        readBy: 'PM',
        trigger: '',
        method: 'do-then-verify',
        complete: '',
        ...list,
      }),
    ),
  },
});
