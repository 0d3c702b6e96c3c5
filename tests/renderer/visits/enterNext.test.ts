import { afterEach, describe, expect, it, vi } from 'vitest';
import { ref } from 'vue';
import { useEnterNext } from '../../../renderer/visits/enterNext.ts';

/** A form of every kind of field, in this order, with Enter listened for. */
function form(): HTMLFormElement {
  document.body.innerHTML = `
    <form>
      <input id="name" type="text" value="as before" />
      <button id="aside" type="button">Aside</button>
      <input id="hidden" type="hidden" />
      <input id="off" type="text" disabled />
      <input id="yes" type="radio" name="answer" />
      <input id="no" type="radio" name="answer" checked />
      <select id="kind"><option>One</option></select>
      <button id="all" type="button" data-enter-stop>All</button>
      <input id="tick" type="checkbox" />
      <textarea id="notes"></textarea>
      <input id="last" type="text" />
      <button id="save" type="submit">Save</button>
      <button id="print" type="submit">Save and print</button>
    </form>`;
  const element = document.querySelector('form')!;
  element.addEventListener('keydown', useEnterNext(ref(element)), { capture: true });
  return element;
}

function enter(id: string, held: KeyboardEventInit = {}): KeyboardEvent {
  const at = document.getElementById(id)!;
  at.focus();
  const event = new KeyboardEvent('keydown', {
    key: 'Enter',
    bubbles: true,
    cancelable: true,
    ...held,
  });
  at.dispatchEvent(event);
  return event;
}
const focused = () => document.activeElement?.id;

afterEach(() => {
  document.body.innerHTML = '';
});

describe('Enter in a form', () => {
  it('is left to a field whose list has a line marked', () => {
    form();
    document.getElementById('last')!.setAttribute('aria-activedescendant', 'line');
    expect(enter('last').defaultPrevented).toBe(false);
    expect(focused()).toBe('last');
  });

  it.each([
    ['a line of text to the checked one of a group', 'name', 'no'],
    ['a group past its other buttons', 'yes', 'kind'],
    ['the checked one of a group to the next field', 'no', 'kind'],
    ['a select, which the space bar opens', 'kind', 'all'],
    ['a box to tick to the notes', 'tick', 'notes'],
    ['the last field to the button that saves', 'last', 'save'],
  ])('leads from %s', (_what, from, to) => {
    form();
    expect(enter(from).defaultPrevented).toBe(true);
    expect(focused()).toBe(to);
  });

  it.each([
    ['text area, where it begins a line', 'notes'],
    ['button', 'aside'],
    ['button that answers in place of a field', 'all'],
  ])('is left alone in a %s', (_what, id) => {
    form();
    expect(enter(id).defaultPrevented).toBe(false);
    expect(focused()).toBe(id);
  });

  it.each([
    ['last', 'notes'],
    ['tick', 'all'],
    ['yes', 'name'],
    ['no', 'name'],
    ['name', 'name'],
  ])('leads back with Shift, from %s to %s', (from, to) => {
    form();
    enter(from, { shiftKey: true });
    expect(focused()).toBe(to);
  });

  it('selects the text it comes to, as Tab does', () => {
    form();
    enter('no', { shiftKey: true });
    const name = document.getElementById('name') as HTMLInputElement;
    expect(name.value.slice(name.selectionStart!, name.selectionEnd!)).toBe('as before');
  });

  it('never sends the form by itself, and sends it with Ctrl or Cmd from anywhere', () => {
    const element = form();
    const sent = vi.fn((event: Event) => event.preventDefault());
    element.addEventListener('submit', sent);
    for (const id of ['name', 'no', 'tick', 'last']) enter(id);
    expect(sent).not.toHaveBeenCalled();
    enter('notes', { ctrlKey: true });
    enter('name', { metaKey: true });
    expect(sent).toHaveBeenCalledTimes(2);
  });

  it('is left to an input method that is still composing', () => {
    form();
    expect(enter('name', { isComposing: true }).defaultPrevented).toBe(false);
    expect(focused()).toBe('name');
  });
});
