/** Puts children in order without ever moving `pinned`: an element that is moved loses focus and caret. */
export function arrange(parent: HTMLElement, wanted: readonly HTMLElement[], pinned: Element | null): void {
  const keep = new Set<Element>(wanted);
  for (const child of [...parent.children]) if (!keep.has(child)) child.remove();
  const middle = Math.max(0, (wanted as readonly Element[]).indexOf(pinned as Element));
  if (wanted[middle] && wanted[middle].parentElement !== parent) parent.append(wanted[middle]);
  for (let i = middle - 1; i >= 0; i--) {
    if (wanted[i]!.nextSibling !== wanted[i + 1]) parent.insertBefore(wanted[i]!, wanted[i + 1]!);
  }
  for (let i = middle + 1; i < wanted.length; i++) {
    if (wanted[i]!.previousSibling !== wanted[i - 1]) wanted[i - 1]!.after(wanted[i]!);
  }
}
