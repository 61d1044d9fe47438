// Any gate that can be written: for the laws of the notation, and for whoever needs gates to try their own code on.
import fc from 'fast-check';
import type { Gate, GateUnit, Term } from '../../lib/gate/syntax.ts';
import {
  ALTITUDE_WORDS,
  DETENT_ALLOWED,
  DETENT_NEEDED,
  MEASURE_WORDS,
  SPEED_WORDS,
  TARGET_WORDS,
} from '../../lib/gate/words.ts';

const span = { from: 0, to: 0 };
const keys = <K extends string>(record: Readonly<Record<K, unknown>>): K[] => Object.keys(record) as K[];
const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
const figure = fc.oneof(
  whole(0, 40_000),
  whole(0, 99_999).map((each) => each / 100),
  whole(-9_000, 9_999_999).map((each) => each / 1000),
);

/** Names as sheets have them, and names that must be quoted. */
export const nameArbitrary: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(
    'F0',
    'F6',
    'F12',
    'F18',
    'GA-01',
    'TO-L1',
    'RATE-DN',
    'LEVEL',
    'ALT',
    'V2-01',
    'to-01',
    '15',
    'and',
    'AND',
  ),
  fc.string({ minLength: 1, maxLength: 12 }),
);

const amount: fc.Arbitrary<Term> = fc.oneof(
  fc
    .tuple(figure, fc.constantFrom<GateUnit>('kt', 'NM', 'km', 'ft/min', '%', 's', 'min', '°C', '°', 't', 'kg', 'lb'))
    .map(([value, unit]): Term => ({ kind: 'amount', value, unit, reference: null, span })),
  fc
    .tuple(figure, fc.constantFrom<GateUnit>('ft', 'm'), fc.constantFrom('AAL', 'MSL', 'radio', null))
    .map(([value, unit, reference]): Term => ({ kind: 'amount', value, unit, reference, span })),
  whole(0, 600).map((level): Term => ({ kind: 'amount', value: level * 100, unit: 'ft', reference: 'FL', span })),
  whole(0, 99).map((mach): Term => ({ kind: 'amount', value: mach / 100, unit: 'M', reference: null, span })),
);

const speed: fc.Arbitrary<Term> = fc
  .tuple(fc.constantFrom(...keys(SPEED_WORDS)), nameArbitrary, fc.boolean(), fc.boolean())
  .map(([name, detent, named, icing]): Term => {
    const has = DETENT_NEEDED.has(name) || (named && DETENT_ALLOWED.has(name));
    return { kind: 'speed', name, detent: has ? detent : null, icing, span };
  });

const plainTerm: fc.Arbitrary<Term> = fc.oneof(
  amount,
  speed,
  fc.constantFrom(...keys(ALTITUDE_WORDS)).map((name): Term => ({ kind: 'altitude', name, span })),
  fc.constantFrom(...TARGET_WORDS).map((name): Term => ({ kind: 'target', name, span })),
  fc
    .tuple(fc.constantFrom(...keys(MEASURE_WORDS)), nameArbitrary)
    .map(([measure, of]): Term => ({ kind: 'measure', measure, of: measure === 'distance' ? of : null, span })),
);

export const termArbitrary: fc.Arbitrary<Term> = fc.letrec<{ term: Term }>((tie) => ({
  term: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    plainTerm,
    fc
      .tuple(fc.constantFrom('+' as const, '-' as const), tie('term'), tie('term'))
      .map(([sign, left, right]): Term => ({ kind: 'sum', sign, left, right, span })),
    fc
      .tuple(fc.constantFrom('max' as const, 'min' as const), fc.array(tie('term'), { minLength: 1, maxLength: 3 }))
      .map(([which, of]): Term => ({ kind: 'extreme', which, of, span })),
  ),
})).term;

const how = fc.constantFrom('indicated' as const, 'selected' as const);
const words = fc.string({ maxLength: 20, unit: 'grapheme' });

const leaf: fc.Arbitrary<Gate> = fc.oneof(
  fc
    .tuple(termArbitrary, fc.constantFrom('<', '<=', '=', '>=', '>'), termArbitrary)
    .map(([left, op, right]) => ({ kind: 'compare', left, op, right, span }) as Gate),
  // `thrust = LIFT` is a mode; a measured thrust is compared with words of the notation only.
  fc
    .tuple(termArbitrary, termArbitrary, termArbitrary)
    .map(([what, low, high]): Gate => ({ kind: 'window', what, low, high, span })),
  fc
    .tuple(fc.constantFrom(...keys(MEASURE_WORDS)), fc.constantFrom('increasing' as const, 'decreasing' as const))
    .map(([measure, way]): Gate => ({ kind: 'trend', measure, way, span })),
  fc.tuple(nameArbitrary, how).map(([detent, said]): Gate => ({ kind: 'flaps', detent, how: said, span })),
  fc
    .tuple(fc.constantFrom('up' as const, 'down' as const), how)
    .map(([position, said]): Gate => ({ kind: 'gear', position, how: said, span })),
  fc
    .tuple(
      fc.constantFrom('thrust' as const, 'lateral' as const, 'vertical' as const),
      fc.array(nameArbitrary, { minLength: 1, maxLength: 3 }),
    )
    .map(([axis, said]): Gate => ({ kind: 'mode', axis, words: said, span })),
  nameArbitrary.map((word): Gate => ({ kind: 'armed', word, span })),
  fc.boolean().map((on): Gate => ({ kind: 'autopilot', on, span })),
  words.map((text): Gate => ({ kind: 'heard', words: text, span })),
  words.map((text): Gate => ({ kind: 'event', text, span })),
  fc.oneof(words, fc.constant('cleared')).map((text): Gate => ({ kind: 'judged', text, span })),
  fc.constant<Gate>({ kind: 'then', span }),
  fc
    .tuple(nameArbitrary, fc.option(amount), fc.boolean())
    .map(([step, delay, every]): Gate => ({ kind: 'after', step, delay, every: delay !== null && every, span })),
);

export const gateArbitrary: fc.Arbitrary<Gate> = fc.letrec<{ gate: Gate }>((tie) => ({
  gate: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    leaf,
    tie('gate').map((of): Gate => ({ kind: 'not', of, span })),
    fc
      .tuple(tie('gate'), amount, fc.option(nameArbitrary))
      .map(([of, limit, step]): Gate => ({ kind: 'within', of, limit, step, span })),
    fc
      .tuple(fc.constantFrom('all' as const, 'any' as const), fc.array(tie('gate'), { minLength: 2, maxLength: 3 }))
      .map(([kind, of]): Gate => ({ kind, of, span })),
  ),
})).gate;
