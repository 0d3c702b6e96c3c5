/**
 * What Enter does in a group of fields that belongs together but is no form of its own, since it may
 * stand inside one: in a field of one line it does what the group's button does.
 */
export function onEnter(set: () => unknown): (event: KeyboardEvent) => void {
  return (event) => {
    const { target } = event;
    if (!(target instanceof HTMLElement)) return;
    if (!target.matches('input:not([type="checkbox"], [type="radio"])')) return;
    event.preventDefault();
    void set();
  };
}
