'use client';
import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { err } from '../../../lib/base/result.ts';
import { readTable } from '../../../lib/mode/table-text.ts';
import { ActForm } from '../../_ui/act-form.tsx';
import { Button } from '../../_ui/button.tsx';
import { Field } from '../../_ui/field.tsx';
import { Section } from '../../_ui/page-head.tsx';
import { bringIn } from './actions.ts';
import { type Keep, type Kept, untouched } from './kept-cells.ts';
import { nextSheet } from './sheet-grid.ts';

/** Figures and mode table together become a revision, or nothing does. */
export function MakeRevision({ sheet, kept, keep }: { sheet: Sheet; kept: Kept; keep: Keep }) {
  return (
    <Section title="Make it a revision">
      <ActForm
        act={async () => {
          const table = kept.table && readTable(kept.table);
          if (table && table.modes === null) {
            const sentence =
              'The mode table has cells that can not be read yet. Nothing was imported; all you typed is here.';
            return err({ code: 'not-understood', sentence, details: table.problems.map((one) => one.says) });
          }
          const data = nextSheet(sheet, kept.revision, kept.typed, table?.modes ?? undefined);
          const answer = await bringIn({ text: JSON.stringify(data), name: `revision ${kept.revision}` });
          if (answer.ok) keep(null);
          return answer;
        }}
        onDone={({ revisionId }) => ({ go: `/sheets/${revisionId}` })}
        button="Import this revision"
      >
        <Field
          label="Name of the revision"
          required
          value={kept.revision}
          onChange={(event) => keep({ ...kept, revision: event.target.value })}
          hint={`It follows ${sheet.revision}, with the figures and the mode table as edited. Procedures that rest on ${sheet.revision} keep it until they are checked anew.`}
        />
      </ActForm>
      <div>
        <Button look="grave" onClick={() => keep(null)} disabled={untouched(kept)}>
          Discard what I typed
        </Button>
      </div>
    </Section>
  );
}
