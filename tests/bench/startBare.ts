// A process that opens the file it is given, and runs the bare SQL.
import { keepCompiled } from '../../electron/launch/compiled.mjs';

keepCompiled();
const { listBare, openBare } = await import('./bareSql.ts');
const db = openBare(process.argv[2]!);
listBare(db);
db.close();
