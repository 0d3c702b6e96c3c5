import type { exchangeCalls } from '../../contract/calls/exchange.ts';
import type { Context, Handlers, LateHandlers } from '../database/context.ts';
import { notFound } from '../refuse.ts';
import { dropWeighing } from '../weighings/weighings.ts';
import { lookAtBundle, runBundle } from './bundleImport.ts';
import { makeBundle, type WriteRoom } from './bundleWrite.ts';
import { lookAtTable, previewTable, runImport } from './weightImport.ts';

type ExchangeCall = keyof typeof exchangeCalls;

/** The latest import, which can be taken back while the program runs. */
interface LastImport {
  readonly undoKey: string;
  readonly context: Context;
  readonly ids: readonly string[];
}

export function exchangeHandlers(
  room: WriteRoom,
): Handlers<Exclude<ExchangeCall, 'export/make'>> & LateHandlers<'export/make'> {
  const { transfer, work } = room;
  let last: LastImport | null = null;
  return {
    'export/make': (context, { clientId, workId }) => makeBundle(context, room, workId, clientId),
    'import/readCsv': (context, { token }) => lookAtTable(context, transfer.open(token)),
    'import/preview': (context, { token, ...choices }) =>
      previewTable(context, { taken: transfer.open(token), ...choices }),
    'import/run': (context, { token, workId, ...choices }) =>
      work.run(workId, async (going) => {
        const taken = transfer.open(token);
        const { ids, ...done } = await runImport(context, going, { taken, ...choices });
        last = { undoKey: done.undoKey, context, ids };
        transfer.drop(token);
        return done;
      }),
    'import/bundleLook': (context, { token, workId }) =>
      work.run(workId, (going) => lookAtBundle(context, going, transfer.open(token))),
    'import/bundleRun': (context, { token, workId, ...choices }) =>
      work.run(workId, async (going) => {
        const taken = transfer.open(token);
        const done = await runBundle(context, going, { taken, ...choices });
        transfer.drop(token);
        return done;
      }),
    'import/undo': async (context, { undoKey }) => {
      if (last?.undoKey !== undoKey || last.context !== context) throw notFound('The import');
      const removed = await takeBack(context, last.ids);
      last = null;
      return { removed };
    },
  };
}

/** Removes what an import added; what was removed by hand since is gone already. */
function takeBack(context: Context, ids: readonly string[]): Promise<number> {
  return context.db.transaction().execute(async (db) => {
    let removed = 0;
    for (const id of ids) {
      if ((await dropWeighing(context, db, id, 'The import was taken back.')) !== null)
        removed += 1;
    }
    return removed;
  });
}
