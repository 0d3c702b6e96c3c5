import type { Ref } from 'vue';

/** What Enter stops at: every field, and the few buttons that answer in place of fields. */
const STOPS = 'input, select, textarea, [data-enter-stop]';
/** Parts that hold the focus while nothing in them asks for anything; never a stop. */
const AT_REST = '[data-enter-leaves]';
/**
 * Fields that Enter leaves. In a text area it begins a line, and a button needs it; a select opens by
 * the space bar and the arrow keys.
 */
const LEFT_BY_ENTER = `input:not([type="file"]), select, ${AT_REST}`;
/** A line of the list below the field is marked: Enter takes it. */
const CHOOSING = '[aria-activedescendant]';
const SUBMIT = 'button[type="submit"]';

/**
 * Enter leads to the next field of a form, Shift and Enter to the one before; after the last field
 * comes the button that saves. Enter with Ctrl (Cmd on a Mac) saves from anywhere in the form.
 */
export function useEnterNext(form: Readonly<Ref<HTMLFormElement | null>>) {
  return (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || event.isComposing || event.altKey) return;
    if (form.value === null || !(event.target instanceof HTMLElement)) return;
    if (event.ctrlKey || event.metaKey) {
      take(event);
      form.value.requestSubmit();
      return;
    }
    if (!event.target.matches(LEFT_BY_ENTER) || event.target.matches(CHOOSING)) return;
    take(event);
    move(form.value, event.target, event.shiftKey ? -1 : 1);
  };
}

/** Neither the browser's own way of sending a form nor a part inside it gets to see the key. */
function take(event: KeyboardEvent): void {
  event.preventDefault();
  event.stopPropagation();
}

function move(form: HTMLFormElement, from: HTMLElement, step: 1 | -1): void {
  const stops = [...form.querySelectorAll<HTMLElement>(`${STOPS}, ${AT_REST}`)].filter(
    (stop) => stop === from || canBeReached(stop),
  );
  const button = form.querySelector<HTMLElement>(SUBMIT);
  if (button !== null) stops.push(button);
  let at = stops.indexOf(from) + step;
  while (at in stops && !isOwnStop(stops[at]!, from)) at += step;
  const next = stops[at];
  next?.focus();
  // As Tab does: what is typed next takes the place of what stands there.
  if (next instanceof HTMLInputElement && next.type === 'text') next.select();
}

function canBeReached(stop: HTMLElement): boolean {
  const never = `:disabled, [type="hidden"], [type="file"], [aria-hidden="true"], ${AT_REST}`;
  return !stop.matches(never) && stop.checkVisibility();
}

/** A group of radio buttons is one stop: its checked one, or its first while none is checked. */
function isOwnStop(stop: HTMLElement, from: HTMLElement): boolean {
  if (!isRadio(stop)) return true;
  if (isRadio(from) && from.name === stop.name) return false;
  if (stop.checked) return true;
  const group = [
    ...(stop.form?.querySelectorAll<HTMLInputElement>('input[type="radio"]') ?? []),
  ].filter(({ name }) => name === stop.name);
  return group.every(({ checked }) => !checked) && group[0] === stop;
}

const isRadio = (element: HTMLElement): element is HTMLInputElement =>
  element instanceof HTMLInputElement && element.type === 'radio';
