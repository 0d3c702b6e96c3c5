import type { bundleImportCalls } from '../../contract/calls/bundleImport.ts';
import type { exchangeCalls } from '../../contract/calls/exchange.ts';
import type { Desk, Handlers, LateHandlers } from '../context.ts';
import { notFound } from '../refuse.ts';
import type { Transfer } from '../transfer.ts';
import { dropWeighing } from '../weighings.ts';
import type { WorkRegister } from '../work.ts';
import { lookAtBundle, runBundle } from './bundleImport.ts';
import { makeBundle } from './bundleWrite.ts';
import { lookAtTable, previewTable, runImport } from './weightImport.ts';

export interface ExchangeRoom {
  readonly transfer: Transfer;
  readonly work: WorkRegister;
  readonly version: string;
}

type ExchangeCall = keyof typeof exchangeCalls | keyof typeof bundleImportCalls;

/** The latest import, which can be taken back while the program runs. */
interface LastImport {
  readonly undoKey: string;
  readonly desk: Desk;
  readonly ids: readonly string[];
}

export function exchangeHandlers({
  transfer,
  work,
  version,
}: ExchangeRoom): Handlers<Exclude<ExchangeCall, 'export/make'>> & LateHandlers<'export/make'> {
  let last: LastImport | null = null;
  return {
    'export/make': (desk, { clientId, workId }) =>
      makeBundle(desk, { transfer, work, version }, workId, clientId),
    'import/readCsv': (desk, { token }) => lookAtTable(desk, transfer.open(token)),
    'import/preview': (desk, { token, ...choices }) =>
      previewTable(desk, { taken: transfer.open(token), ...choices }),
    'import/run': (desk, { token, workId, ...choices }) =>
      work.run(workId, async (going) => {
        const taken = transfer.open(token);
        const { ids, ...done } = await runImport(desk, going, { taken, ...choices });
        last = { undoKey: done.undoKey, desk, ids };
        transfer.drop(token);
        return done;
      }),
    'import/bundleLook': (desk, { token, workId }) =>
      work.run(workId, (going) => lookAtBundle(desk, going, transfer.open(token))),
    'import/bundleRun': (desk, { token, workId, ...choices }) =>
      work.run(workId, async (going) => {
        const taken = transfer.open(token);
        const done = await runBundle(desk, going, { taken, ...choices });
        transfer.drop(token);
        return done;
      }),
    'import/undo': async (desk, { undoKey }) => {
      if (last?.undoKey !== undoKey || last.desk !== desk) throw notFound('The import');
      const removed = await takeBack(desk, last.ids);
      last = null;
      return { removed };
    },
  };
}

/** Removes what an import added; what was removed by hand since is gone already. */
function takeBack(desk: Desk, ids: readonly string[]): Promise<number> {
  return desk.db.transaction().execute(async (db) => {
    let removed = 0;
    for (const id of ids) {
      if ((await dropWeighing(desk, db, id, 'The import was taken back.')) !== null) removed += 1;
    }
    return removed;
  });
}
