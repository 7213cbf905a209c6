const tabStop = ['a[href]', 'button', 'input', 'select', 'textarea', 'summary', '[tabindex]'].map((kind) => `${kind}:not([disabled], [tabindex="-1"])`).join(', ');

/** So many elements that had the focus before are known; a form has fewer fields. */
const mostKnown = 40;

/** A control that is switched off for longer than this is not only busy. */
const busyMs = 600;

/** Where the focus was: enough to find the place again once the element is gone. */
interface Stood {
  element: HTMLElement;
  /** From the parent to the root. */
  around: HTMLElement[];
  /** All Tab stops as they were then, in their order. */
  stops: HTMLElement[];
  place: string;
  /** It was switched off while it had the focus. */
  off: boolean;
}

/**
 * Attached to the root of the page, lets no focus fall to the body: when the element that has it goes away because a panel
 * closed or a row was taken, or is switched off, the focus goes to what opened the panel, else to the nearest Tab stop left.
 * @param place where the person is; on another screen the focus is not brought back
 */
export function focusReturn(place: () => string): (root: HTMLElement) => () => void {
  return (root) => {
    let stood: Stood | null = null;
    let earlier: HTMLElement[] = [];
    let pressed = false;
    /** On its way from one control to another the focus is at the body for a moment. */
    let moving = false;
    let timer: ReturnType<typeof setTimeout> | undefined;

    function onfocusin({ target }: FocusEvent): void {
      if (!(target instanceof HTMLElement)) return;
      if (stood) earlier = [...earlier.filter((element) => element.isConnected), stood.element].slice(-mostKnown);
      stood = { element: target, around: [...ancestors(target, root)], stops: stopsIn(root), place: place(), off: false };
      moving = false;
    }

    /** A press beside all controls lets go of the focus on purpose. */
    function onfocusout({ relatedTarget }: FocusEvent): void {
      moving = relatedTarget !== null;
      if (pressed && !relatedTarget) stood = null;
    }

    function look(): void {
      if (!stood || moving || stood.place !== place()) return;
      const { element } = stood;
      if (element.matches('[disabled]')) {
        stood.off = true;
        clearTimeout(timer);
        timer = setTimeout(() => stood?.element === element && element.matches('[disabled]') && document.activeElement === document.body && back(stood), busyMs);
      } else if (document.activeElement === document.body) {
        if (!element.isConnected) back(stood);
        else if (stood.off) element.focus();
      }
    }

    function back({ element, around, stops }: Stood): void {
      // The same control, drawn anew.
      const same = element.id ? document.getElementById(element.id) : null;
      if (same && canTake(same)) return same.focus();
      const left = around.findIndex((ancestor) => ancestor.isConnected);
      const gone = element.isConnected ? element : (around[left - 1] ?? element);
      const at = stops.indexOf(element);
      const opener = earlier.findLast((known) => !gone.contains(known));
      for (const within of left === -1 ? [root] : around.slice(left)) {
        const near = [...(opener ? [opener] : []), ...stops.slice(0, Math.max(at, 0)).reverse(), ...stops.slice(at + 1), ...stopsIn(within)];
        const found = near.find((stop) => within.contains(stop) && canTake(stop));
        if (found) return found.focus();
        if (within.tabIndex === -1 && within.hasAttribute('tabindex')) return within.focus();
      }
    }

    const press = () => (pressed = true);
    const release = () => (pressed = false);
    const watch = new MutationObserver(look);
    watch.observe(root, { subtree: true, childList: true, attributes: true, attributeFilter: ['disabled'] });
    root.addEventListener('focusin', onfocusin);
    root.addEventListener('focusout', onfocusout);
    window.addEventListener('pointerdown', press, true);
    window.addEventListener('pointerup', release, true);
    window.addEventListener('pointercancel', release, true);
    return () => {
      watch.disconnect();
      clearTimeout(timer);
      root.removeEventListener('focusin', onfocusin);
      root.removeEventListener('focusout', onfocusout);
      window.removeEventListener('pointerdown', press, true);
      window.removeEventListener('pointerup', release, true);
      window.removeEventListener('pointercancel', release, true);
    };
  };
}

function* ancestors(element: HTMLElement, root: HTMLElement): Generator<HTMLElement> {
  for (let parent = element.parentElement; parent && root.contains(parent); parent = parent.parentElement) yield parent;
}

function stopsIn(element: HTMLElement): HTMLElement[] {
  return [...element.querySelectorAll<HTMLElement>(tabStop)];
}

function canTake(element: HTMLElement): boolean {
  return element.isConnected && element.matches(tabStop) && element.getClientRects().length > 0;
}
