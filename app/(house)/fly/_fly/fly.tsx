'use client';
import { useMemo } from 'react';
import { readSheet } from '../../../../lib/aircraft/sheet.ts';
import type { OpenFlight } from '../../../../lib/server/flights.ts';
import { LinkButton } from '../../../_ui/button.tsx';
import { Empty } from '../../../_ui/notice.tsx';
import { Board } from './board.tsx';
import { CursorProvider } from './cursor.tsx';
import type { Ground } from './fly-one.ts';

/** What is flown needs a sheet and a policy; without them the page says where they come from. */
export function Fly({ open }: { open: OpenFlight }) {
  const ground = useMemo((): Ground | string => {
    const { procedure, other, sheet, policy, library } = open;
    const read = sheet && readSheet(sheet.content);
    if (procedure.steps.length === 0) return 'The text has no steps yet.';
    if (!read) return 'There is no type data sheet of its type.';
    if (!read.ok) return 'The type data sheet does not read.';
    if (!policy) return 'There is no policy.';
    return { procedure, against: other?.procedure ?? null, sheet: read.value, policy, library };
  }, [open]);
  if (typeof ground === 'string') {
    return (
      <Empty title="Nothing can be flown yet">
        <p>{ground} A flight needs steps, the sheet of the type and the operator's policy.</p>
        <p>
          <LinkButton href="/sheets">Sheets</LinkButton> <LinkButton href="/policy">Policy</LinkButton>
        </p>
      </Empty>
    );
  }
  return (
    <CursorProvider>
      <Board open={open} ground={ground} />
    </CursorProvider>
  );
}
