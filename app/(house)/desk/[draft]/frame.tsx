'use client';
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { readSheet } from '../../../../lib/aircraft/sheet.ts';
import type { Finding } from '../../../../lib/check/finding.ts';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { railWith } from '../../../_ui/rail-rows.ts';
import { useUndoKeys, useWhole } from '../_draft/use-draft.ts';
import { Banner } from './banner.tsx';
import { EditingContext } from './editing.ts';
import css from './editor.module.css';
import { HeadBar } from './head-bar.tsx';
import { ProcedureHead } from './procedure-head.tsx';
import { Sheet } from './sheet.tsx';
import { SidePanel, type Tab } from './side-panel.tsx';
import { StepIndex } from './step-index.tsx';
import { useChecks } from './use-checks.ts';

/** The desk of one draft: the index of steps, the page, and what the checks say. */
export function Frame({ open }: { open: OpenDraft }) {
  const frame = useRef<HTMLDivElement>(null);
  useUndoKeys(frame);
  const whole = useWhole();
  const procedure = useDeferredValue(whole.procedure);
  const sheet = useMemo(() => {
    const read = open.sheet ? readSheet(open.sheet.content) : null;
    return read?.ok ? read.value : null;
  }, [open.sheet]);
  const policy = open.policy?.policy ?? null;
  const { library, others, fleet, governance } = open;
  const facts = useMemo(
    () => ({ sheet, policy, library, others, fleet, governance }),
    [sheet, policy, library, others, fleet, governance],
  );
  const checking = useChecks(procedure, facts);
  const [weight, setWeight] = useState<number | null>(null);
  const rail = useMemo(
    () => (sheet && policy ? railWith(procedure, sheet, policy, weight) : null),
    [procedure, sheet, policy, weight],
  );
  const [current, setCurrent] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const [tab, setTab] = useState<Tab>('Findings');
  const wanted = useRef<string | null>(null);

  const goTo = useCallback((id: string | null, field?: string) => {
    wanted.current = field ?? null;
    setCurrent((before) => {
      if (id === null && before)
        queueMicrotask(() => document.querySelector<HTMLElement>(`[data-head="${before}"]`)?.focus());
      return id;
    });
  }, []);
  useEffect(() => {
    if (!current || !wanted.current) return;
    const cell = frame.current?.querySelector<HTMLElement>(`[data-step="${current}"] [data-field="${wanted.current}"]`);
    wanted.current = null;
    if (!cell) return;
    cell.focus();
    if (cell.isContentEditable) document.getSelection()?.selectAllChildren(cell);
    document.getSelection()?.collapseToEnd();
  }, [current]);

  const editing = useMemo(
    () => ({ may: open.may, sheet, policy, current, open: goTo, refuse: setSaid, labels: open.labels }),
    [open.may, open.labels, sheet, policy, current, goTo],
  );
  const findings = checking.checked?.findings ?? NONE;
  return (
    <EditingContext value={editing}>
      <div ref={frame} className={css.frame}>
        <HeadBar open={open} said={said} onSubmit={() => setTab('Submit')} />
        <Banner open={open} problems={whole.problems} />
        <div className={css.desk}>
          <StepIndex findings={findings} />
          <main id="main" className={css.page}>
            <ProcedureHead open={open} />
            <Sheet rail={rail} findings={findings} onSaid={setSaid} />
          </main>
          <SidePanel
            open={open}
            checking={checking}
            procedure={procedure}
            weight={weight}
            onWeight={setWeight}
            tab={tab}
            onTab={setTab}
          />
        </div>
      </div>
    </EditingContext>
  );
}

const NONE: readonly Finding[] = [];
