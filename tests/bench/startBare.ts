// A process that opens the file it is given, and runs the bare SQL.
import { listBare, openBare } from './bareSql.ts';

const db = openBare(process.argv[2]!);
listBare(db);
db.close();
