'use client';
import type { Holder } from '../../../../lib/document/model.ts';
import { ROLES, type Step, VERBS } from '../../../../lib/procedure/procedure.ts';
import script from '../../../_ui/script.module.css';
import { ChoiceCell, TextCell, ValueCell } from './cells.tsx';
import { useEditing } from './editing.ts';
import { readArmed, readMode, writeArmed, writeMode } from './expect-text.ts';
import { GateCell } from './gate-cell.tsx';
import { MoreFields } from './more-fields.tsx';
import css from './step-fields.module.css';

const AXES = ['thrust', 'lateral', 'vertical'] as const;

/** The step at hand as fields, in the columns in which it will read. */
export function StepFields({ step }: { step: Step }) {
  const { sheet } = useEditing();
  const holder: Holder = { in: 'steps', id: step.id };
  const words = sheet?.modes;
  return (
    <>
      <span className={`${script.cue} ${css.stack}`}>
        <GateCell holder={holder} field="cue" label="Cue" text={step.cue} />
        <TextCell holder={holder} field="only" label="Only when" hint="only when … (always)" />
      </span>
      <span className={script.who}>
        <ChoiceCell holder={holder} field="who" label="Who acts" value={step.who} of={ROLES} none="who" />
      </span>
      <span className={`${script.act} ${css.stack}`}>
        <span className={css.pair}>
          <ChoiceCell
            holder={holder}
            field="orderBy"
            label="Who orders"
            value={step.orderBy}
            of={ROLES}
            none="no order"
          />
          <TextCell holder={holder} field="orderWords" label="Words of the order" hint="orders …" quoted />
        </span>
        <span className={css.pair}>
          <ChoiceCell holder={holder} field="verb" label="Action" value={step.verb} of={VERBS} none="does" />
          <TextCell holder={holder} field="object" label="Object" hint="what" />
        </span>
        <TextCell holder={holder} field="value" label="Value" hint="to which value, with unit and reference" />
        <span className={css.pair}>
          <ChoiceCell
            holder={holder}
            field="sayBy"
            label="Who says it"
            value={step.sayBy}
            of={ROLES}
            none="actor says"
          />
          <TextCell holder={holder} field="say" label="Callout" hint="says …" quoted />
        </span>
        <span className={css.pair}>
          <ChoiceCell
            holder={holder}
            field="replyBy"
            label="Who replies"
            value={step.replyBy}
            of={ROLES}
            none="no reply"
          />
          <TextCell holder={holder} field="reply" label="Reply" hint="replies …" quoted />
        </span>
        <TextCell holder={holder} field="replyAct" label="Answer by an act" hint="or answers by an act …" />
      </span>
      <span className={`${script.modes} ${css.stack}`}>
        {AXES.map((axis) => (
          <ValueCell
            key={axis}
            holder={holder}
            field={`expect.${axis}`}
            label={`Expected ${axis} mode`}
            hint={axis}
            value={step.expect[axis]}
            write={writeMode}
            read={(typed) => ({ value: readMode(typed) })}
            suggestions={['same', ...(words?.[axis] ?? [])]}
          />
        ))}
        <ValueCell
          holder={holder}
          field="expect.armed"
          label="Armed"
          hint="armed: ALT, +ROUTE, nothing"
          value={step.expect.armed}
          write={writeArmed}
          read={(typed) => ({ value: readArmed(typed) })}
          suggestions={['same', 'nothing', ...(words ? [...words.armedVertical, ...words.armedLateral] : [])]}
        />
        <TextCell holder={holder} field="expectNote" label="Note on the modes" hint="note on the modes" />
      </span>
      <MoreFields step={step} holder={holder} />
    </>
  );
}
