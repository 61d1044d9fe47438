// The landing detent of briefing, entry, selection and list told apart.
import { has, one, type Plants } from './plant.ts';

export const vref: Plants = {
  'vref-detent-mismatch': (base) => {
    if (!has(base, 'landing')) return [];
    const library = base.facts.library!;
    const answering = (response: string) => ({
      library: {
        ...library,
        checklists: library.checklists.map((list) => ({
          ...list,
          items: list.items.map((item) => (item.challenge === 'Flap' ? { ...item, response } : item)),
        })),
      },
    });
    // The lever no longer goes to the detent that is briefed.
    const landing = base.facts.sheet!.detents.filter(({ use }) => use.includes('landing')).map(({ name }) => name);
    const planned = landing.at(-1)!;
    const other = {
      ...base.procedure,
      steps: base.procedure.steps.filter(({ object, value }) => !/flap/.test(object) || value !== planned),
    };
    return [
      ...one('the list compares nothing', base.procedure, answering('set')),
      ...(landing.length > 1
        ? one('another detent is selected than is briefed', other)
        : one('the list answers with no detent', base.procedure, answering('checked'))),
    ];
  },
};
