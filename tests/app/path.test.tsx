import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { FindingCard } from '../../app/_ui/finding.tsx';
import { checkProcedure } from '../../lib/check/check.ts';
import { findStep } from '../../lib/procedure/locate.ts';
import { seedProcedure } from '../kit/seed.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

/** The read-out that tells the crew to expect what no flight shows. */
function misread() {
  const written = seedProcedure('go-around');
  const step = findStep(written, 'GA-03')!;
  const wrong = { ...step, expect: { ...step.expect, vertical: 'GLIDE' } };
  const steps = written.steps.map((one) => (one === step ? wrong : one));
  const { findings } = checkProcedure({ ...written, steps }, { sheet: tn182, policy: housePolicy });
  const found = findings.find(({ at, witness }) => at.step === step.id && witness.kind === 'path');
  return { finding: found!, expected: wrong.expect };
}

test('a path is listed move by move, changed words marked, with its standards and what the text expects', () => {
  const { finding, expected } = misread();
  const { witness } = finding;
  if (witness.kind !== 'path') throw new Error(`the witness is ${witness.kind}`);
  const html = renderToStaticMarkup(<FindingCard finding={finding} where="GA-03" expected={expected} />);
  expect(html.match(/<li>/g)).toHaveLength(witness.steps.length);
  expect(html).toContain('Step through it');
  expect(html).toContain(`On standards ${witness.standards.join(' and ')}.`);
  const moved = witness.steps.filter((move, at) => at > 0 && move.vertical !== witness.steps[at - 1]!.vertical);
  expect(moved.length).toBeGreaterThan(0);
  expect(html.match(/vertical now /g)).toHaveLength(moved.length);
  expect(html).toContain('The text expects after this step: ');
  expect(html).toContain('GLIDE');
});

test('other witnesses have nothing to step through', () => {
  const { finding } = misread();
  const witness = { kind: 'absent', field: 'cue' } as const;
  const html = renderToStaticMarkup(<FindingCard finding={{ ...finding, witness }} where="GA-03" />);
  expect(html).not.toContain('<details');
});
