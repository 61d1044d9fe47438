// In what the steps of one family are measured by their majority.
import { kept } from './kept.ts';
import type { Sister } from './sister.ts';

const figures = kept((trigger: string): string => (trigger.match(/\d[\d .]*\d|\d/g) ?? []).join(' / '));
const shape = kept((trigger: string): string => trigger.replaceAll(/\d[\d .]*\d|\d/g, '#'));

const alikeTriggers = (a: Sister, b: Sister): boolean => shape(a.trigger) === shape(b.trigger);

/** What is compared, its field, and how two can be compared at all. */
export const ASPECTS: readonly {
  readonly what: string;
  readonly field: string;
  readonly of: (sister: Sister) => string;
  readonly comparable?: (a: Sister, b: Sister) => boolean;
}[] = [
  { what: 'value', field: 'value', of: (each) => each.value },
  {
    what: 'trigger',
    field: 'cue',
    of: (each) => figures(each.trigger),
    comparable: alikeTriggers,
  },
  { what: 'actor', field: 'who', of: (each) => each.who },
  { what: 'order', field: 'orderWords', of: (each) => each.order },
  ...['thrust', 'lateral', 'vertical', 'armed'].map((axis, index) => ({
    what: `${axis} mode`,
    field: `expect.${axis}`,
    of: (each: Sister) => each.modes[index]!,
    // Nothing said agrees with everything.
    comparable: (a: Sister, b: Sister) => alikeTriggers(a, b) && a.modes[index] !== '' && b.modes[index] !== '',
  })),
];
