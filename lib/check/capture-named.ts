// Whether a procedure knows that a capture may come before it is expected: a step or a branch that waits for it.
import type { Gate } from '../gate/syntax.ts';
import { conjuncts } from '../procedure/cue.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import { allSteps, type Procedure, type Step } from '../procedure/procedure.ts';

const isCapture = (part: Gate): boolean =>
  part.kind === 'mode' && part.axis === 'vertical' && part.words.includes('CAPTURE');
const waits = (text: string): boolean => conjuncts(parsedCue(text).gate).some(isCapture);

export const stepsAtCapture = (procedure: Procedure): readonly Step[] =>
  allSteps(procedure).filter(({ cue }) => waits(cue));

export const namesCapture = (procedure: Procedure): boolean =>
  stepsAtCapture(procedure).length > 0 || procedure.branches.some(({ when }) => waits(when));
