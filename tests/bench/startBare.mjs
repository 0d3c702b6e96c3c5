// A process that opens the file it is given, and runs the SQL it is given. Plain JavaScript, as the
// program is once it is built.
import { keepCompiled } from '../../electron/launch/compiled.mjs';

keepCompiled();
const { default: BetterSqlite3 } = await import('better-sqlite3');
const [, , file, sql] = process.argv;
const db = new BetterSqlite3(file, { readonly: true });
db.prepare(sql).all();
db.close();
