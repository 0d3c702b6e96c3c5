import type { Desk } from './context.ts';

type Answers = Readonly<Record<string, (desk: Desk, input: never) => Promise<unknown>>>;

/**
 * The handlers of a room that is read when the first of its calls comes: no start waits for what
 * only prints, packs or imports.
 * @param calls the calls of the room, as the contract lists them
 */
export function whenAsked<R extends Answers>(
  calls: Readonly<Record<keyof R, unknown>>,
  read: () => Promise<R>,
): R {
  let room: Promise<R> | undefined;
  const answer =
    (name: keyof R) =>
    async (desk: Desk, input: never): Promise<unknown> => {
      room ??= read();
      return (await room)[name]!(desk, input);
    };
  return Object.fromEntries(Object.keys(calls).map((name) => [name, answer(name)])) as Answers as R;
}
