'use client';
import type { ReactNode } from 'react';
import { setField } from '../../../../lib/document/edit.ts';
import type { Holder } from '../../../../lib/document/model.ts';
import { CLASSES, PHASES, type StateLine } from '../../../../lib/procedure/procedure.ts';
import { useDraft, useMeta } from '../_draft/use-draft.ts';
import { ChoiceCell, TextCell, ValueCell } from './cells.tsx';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { type RangeKind, readList, readRange, writeList, writeRange } from './range-text.ts';

const META: Holder = { in: 'meta' };
const list = (typed: string) => ({ value: readList(typed) });

export function MetaFields() {
  const meta = useMeta();
  const { sheet } = useEditing();
  const { envelope } = meta;
  const detents = sheet?.detents.map((detent) => detent.name) ?? [];
  return (
    <div className={css.meta}>
      <div className={css.grid}>
        <Named name="Class">
          <ChoiceCell holder={META} field="class" label="Class" value={meta.class} of={CLASSES} />
        </Named>
        <Named name="Phases">
          <ValueCell
            holder={META}
            field="phases"
            label="Phases"
            value={meta.phases}
            write={writeList}
            read={list}
            suggestions={PHASES}
            hint="take-off, climb"
          />
        </Named>
        <Named name="Type">
          <ValueCell
            holder={META}
            field="effectivity.type"
            label="Type"
            value={meta.effectivity.type}
            write={(type) => type}
            read={(typed) => ({ value: typed.trim() })}
          />
        </Named>
        <Named name="Standards">
          <ValueCell
            holder={META}
            field="effectivity.standards"
            label="Standards"
            value={meta.effectivity.standards}
            write={writeList}
            read={list}
            hint="A, B"
          />
        </Named>
        <Named name="For, in words">
          <TextCell holder={META} field="effectivity.note" label="Effectivity in words" hint="any further limit" />
        </Named>
        <Named name="Owner">
          <ValueCell
            holder={META}
            field="owner"
            label="Owner"
            value={meta.owner}
            write={(owner) => owner}
            read={(typed) => ({ value: typed.trim() })}
          />
        </Named>
      </div>
      <div className={css.grid}>
        {(Object.keys(RANGES) as RangeKind[]).map((kind) => (
          <Named key={kind} name={RANGES[kind].name}>
            <ValueCell
              holder={META}
              field={`envelope.${kind}`}
              label={RANGES[kind].name}
              hint={RANGES[kind].hint}
              value={envelope[kind]}
              write={(range) => writeRange(kind, range)}
              read={(typed) => readRange(kind, typed)}
            />
          </Named>
        ))}
        <Named name="Detents">
          <ValueCell
            holder={META}
            field="envelope.detents"
            label="Detents"
            value={envelope.detents}
            write={writeList}
            read={list}
            suggestions={detents}
            hint="F6, F12"
          />
        </Named>
        <Named name="Weight limit">
          <TextCell
            holder={META}
            field="weightLimit"
            label="Weight limit"
            hint="which limit further holds, and from where"
          />
        </Named>
        <Named name="Leaves to">
          <ValueCell
            holder={META}
            field="leavesTo"
            label="Leaves to"
            value={meta.leavesTo}
            write={writeList}
            read={list}
          />
        </Named>
      </div>
      <StateFields side="entry" name="Starts from" state={meta.entry} />
      <StateFields side="exit" name="Ends with" state={meta.exit} />
      <Named name="Why in this order">
        <TextCell holder={META} field="rationale" label="Why in this order" hint="what the order protects" />
      </Named>
    </div>
  );
}

const RANGES: Record<RangeKind, { name: string; hint: string }> = {
  weight: { name: 'Weights', hint: '46.0 t to 66.8 t' },
  elevation: { name: 'Elevation', hint: '0 ft to 5 430 ft' },
  temperature: { name: 'Temperature', hint: 'ISA-40 to ISA+35' },
  wind: { name: 'Wind', hint: '-10 kt to +40 kt' },
  level: { name: 'Level', hint: '6 000 ft to 39 000 ft' },
};

function StateFields({ side, name, state }: { side: 'entry' | 'exit'; name: string; state: StateLine }) {
  const { sheet } = useEditing();
  const { doc, hand } = useDraft();
  const words = sheet?.modes;
  const armed = state.armed === null ? '' : state.armed.length === 0 ? 'nothing' : state.armed.join(', ');
  const modes = (axis: 'thrust' | 'lateral' | 'vertical') => (
    <Named key={axis} name={axis}>
      <ValueCell
        holder={META}
        field={`${side}.${axis}`}
        label={`${name}: ${axis}`}
        value={state[axis]}
        write={writeList}
        read={list}
        suggestions={words?.[axis] ?? []}
      />
    </Named>
  );
  return (
    <section className={css['state-line']} aria-label={name}>
      <h3>{name}</h3>
      <div className={css.grid}>
        <Named name="flaps">
          <ValueCell
            holder={META}
            field={`${side}.flaps`}
            label={`${name}: flaps`}
            value={state.flaps}
            write={writeList}
            read={list}
            hint="F0"
          />
        </Named>
        <Named name="gear">
          <ChoiceCell
            holder={META}
            field={`${side}.gear`}
            label={`${name}: gear`}
            value={state.gear}
            of={['up', 'down']}
          />
        </Named>
        <Named name="speed">
          <TextCell holder={META} field={`${side}.speed`} label={`${name}: speed`} hint="speed target" />
        </Named>
        <Named name="autopilot">
          <ValueCell
            holder={META}
            field={`${side}.autopilot`}
            label={`${name}: autopilot`}
            value={state.autopilot}
            write={(text) => text}
            read={(typed) => ({ value: typed.trim() })}
            hint="on, off, either"
          />
        </Named>
        {modes('thrust')}
        {modes('lateral')}
        {modes('vertical')}
        <Named name="armed">
          <input
            aria-label={`${name}: armed`}
            defaultValue={armed}
            key={armed}
            placeholder="ALT, or nothing"
            onBlur={(event) => setField(doc, hand, META, `${side}.armed`, readArmedLine(event.target.value))}
          />
        </Named>
        <Named name="selected altitude">
          <TextCell
            holder={META}
            field={`${side}.selectedAltitude`}
            label={`${name}: selected altitude`}
            hint="selected altitude"
          />
        </Named>
        <Named name="also">
          <TextCell holder={META} field={`${side}.also`} label={`${name}: also`} hint="what else must hold" />
        </Named>
      </div>
    </section>
  );
}

const readArmedLine = (typed: string): readonly string[] | null =>
  typed.trim() === '' ? null : /^(nothing|none)$/i.test(typed.trim()) ? [] : readList(typed.toUpperCase());

function Named({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div className={css.named}>
      <span>{name}</span>
      <div>{children}</div>
    </div>
  );
}
