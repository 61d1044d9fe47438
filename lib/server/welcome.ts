// The frame of every screen: who is here, and which ways are open.
import { type Act, may } from './permit.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type Welcome = {
  readonly name: string;
  readonly operatorName: string;
  readonly may: {
    readonly write: boolean;
    readonly readDrafts: boolean;
    readonly readCandidates: boolean;
    readonly review: boolean;
    readonly sign: boolean;
    readonly acknowledge: boolean;
    readonly readRecord: boolean;
    readonly managePeople: boolean;
    readonly manageFleet: boolean;
    readonly managePolicy: boolean;
    readonly importSheet: boolean;
    readonly manageLibrary: boolean;
  };
};

export function welcome(viewer: Viewer): Answered<Welcome> {
  return within(viewer, async (tx, standing) => {
    const person = await tx.person.findUniqueOrThrow({ where: { id: standing.personId } });
    const operator = await tx.operator.findUniqueOrThrow({ where: { id: standing.operatorId } });
    const can = (act: Act) => may(standing, act);
    return {
      name: person.name,
      operatorName: operator.name,
      may: {
        write: can('write'),
        readDrafts: can('read drafts'),
        readCandidates: can('read candidates'),
        review: can('review'),
        sign: can('sign'),
        acknowledge: can('acknowledge'),
        readRecord: can('read record'),
        managePeople: can('manage people'),
        manageFleet: can('manage fleet'),
        managePolicy: can('manage policy'),
        importSheet: can('import sheet'),
        manageLibrary: can('manage library'),
      },
    };
  });
}
