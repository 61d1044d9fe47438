import { expect } from 'vitest';
import { glideWithoutCourse } from '../../../lib/check/rules/glide-without-course.ts';
import { testRule } from '../../kit/rule-tester.ts';

const glide = { thrust: ['GOVERN'], lateral: ['COURSE'], vertical: ['GLIDE'], armed: [] };
const press = (object: string, cue = 'event "heading assigned"') =>
  ({ cue, who: 'PF', verb: 'press', object }) as const;
const left = (entry: object) => ({
  procedure: { phases: ['approach'] as const, entry, steps: [press('HEADING')] },
  findings: [
    {
      at: 's1 object',
      message: 'left',
      says: 'HEADING leaves COURSE and GLIDE stays on standards A and B',
      witness: { kind: 'path', says: expect.stringContaining('T06 step 1 press HEADING') },
    },
  ],
});

testRule(glideWithoutCourse, {
  valid: [
    { phases: ['approach'], entry: glide, steps: [press('LEVEL'), press('HEADING', 'vertical = LEVEL')] },
    { phases: ['approach'], entry: glide, steps: [press('GO-AROUND switch')] },
    { phases: ['approach'], entry: { ...glide, vertical: ['LEVEL'] }, steps: [press('HEADING', 'vertical = LEVEL')] },
  ],
  invalid: [
    { why: 'heading as assigned, on the glidepath', ...left(glide) },
    { why: 'thrust by hand', ...left({ ...glide, thrust: ['MANUAL'] }) },
    { why: 'on GLIDE or before it', ...left({ ...glide, vertical: ['GLIDE', 'LEVEL'] }) },
  ],
});
