import { z } from 'zod';

const word = z.string().min(1).max(30);
const words = z.array(word);
const oneOf = z.union([z.strictObject({ in: words.min(1) }), z.strictObject({ not: words.min(1) })]);
const armed = z.union([z.strictObject({ has: words.min(1) }), z.strictObject({ lacks: words.min(1) })]);

const when = z.strictObject({
  phase: oneOf.optional(),
  thrust: oneOf.optional(),
  lateral: oneOf.optional(),
  vertical: oneOf.optional(),
  rel: oneOf.optional(),
  armed_vertical: armed.optional(),
  armed_lateral: armed.optional(),
  /** Names of predicates that must be so, and that must not: speeds, heights and whatever else lies outside the modes. */
  holds: words.optional(),
  fails: words.optional(),
});

const altDeed = z.enum(['re-evaluate', 'disarm']);
const byWord = z.record(word, word);

/** Effects of one rule. The names are those of the published table; what is not named stays as it is. */
const then = z.strictObject({
  thrust: word.optional(),
  thrust_unless_manual: word.optional(),
  thrust_by_vertical: byWord.optional(),
  lateral: word.optional(),
  vertical: word.optional(),
  vertical_by_vertical: byWord.optional(),
  vertical_each: words.optional(),
  rel: word.optional(),
  rel_each: words.optional(),
  only_if_rel_changes: z.boolean().optional(),
  phase: word.optional(),
  clear_vertical: z.boolean().optional(),
  clear_lateral: z.boolean().optional(),
  arm_vertical: words.optional(),
  arm_lateral: words.optional(),
  arm_lateral_unless_active: words.optional(),
  disarm_vertical: words.optional(),
  disarm_lateral: words.optional(),
  /** One deed for all standards, or one for each. */
  alt: z.union([altDeed, z.record(word, altDeed)]).optional(),
});

const heading = {
  id: z.string().regex(/^[A-Z]+\d+$/),
  who: z.enum(['crew', 'auto', 'environment']),
  event: z.string().min(1),
  effect: z.string().min(1),
};
const transition = z.union([
  z.strictObject({ ...heading, when, then }),
  /** Several cases of one event; every case whose guard holds is a successor. */
  z.strictObject({ ...heading, any: z.array(z.strictObject({ when, then })).min(1) }),
]);

/** Which hand of a step raises which rules: its verb, a name that stands in its object, and how its value begins. */
const control = z.strictObject({
  verbs: words.min(1),
  object: z.string().min(1),
  value: z.string().min(1).optional(),
  rules: words.min(1),
});
/** Something that may come at any time, once: the rules that it raises; none where the guidance takes no notice of it. */
const surprise = z.strictObject({ name: z.string().min(1), says: z.string().min(1), rules: words });

export const modeSet = z.strictObject({
  source: z.string().min(1),
  thrust: words.min(1),
  lateral: words.min(1),
  vertical: words.min(1),
  armedVertical: words,
  armedLateral: words,
  rel: words.min(1),
  phase: words.min(1),
  climbing: words,
  descending: words,
  /** Vertical modes in which the altitude stays as it is. */
  levels: words.optional(),
  /** Rules by which the guidance leaves a vertical mode that nobody asked it to leave, other than toward an armed one. */
  reversions: words.optional(),
  /** Thrust words under which nothing controls the speed: the levers stay where they are. */
  unprotected: words.optional(),
  /** The vertical mode that arms the selected altitude whichever way it lies. */
  armsAlways: words,
  /** Word of thrust that the guidance leaves alone. */
  manual: word,
  standards: z.record(word, z.string().min(1)),
  /** How a word is spoken. */
  spoken: z.record(word, z.string().min(1)),
  initial: z.array(
    z.strictObject({
      thrust: word,
      lateral: word,
      vertical: word,
      armed_vertical: words,
      armed_lateral: words,
      rel: word,
      phase: word,
    }),
  ),
  rules: z.array(transition).min(1),
  /** Text in gate notation for each name. */
  predicates: z.record(word, z.string().min(1)).optional(),
  controls: z.array(control).optional(),
  environment: z.array(surprise).optional(),
  /** Speed target of each vertical mode, in words. */
  targets: z.record(word, z.string().min(1)),
});

export type ModeSet = z.infer<typeof modeSet>;
export type ModeTransition = ModeSet['rules'][number];
export type ModeWhen = z.infer<typeof when>;
export type ModeThen = z.infer<typeof then>;

/** Every word of the mode line, by axis, and the armed words of both axes together. */
export function wordsOf(
  modes: ModeSet,
): Readonly<Record<'thrust' | 'lateral' | 'vertical' | 'armed', readonly string[]>> {
  const armedWords = [...modes.armedVertical, ...modes.armedLateral];
  return { thrust: modes.thrust, lateral: modes.lateral, vertical: modes.vertical, armed: armedWords };
}
