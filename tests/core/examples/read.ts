import { resolve } from 'node:path';
import ts from 'typescript';

/** One worked call of a docstring: `code // => result`, or `code // throws message`. */
export interface Example {
  /** The function whose docstring it stands in. */
  readonly of: string;
  readonly code: string;
  readonly ends: 'result' | 'throws';
  /** The result as it is written, or the message. */
  readonly expected: string;
}

export interface Documented {
  /** Functions that `core/index.ts` exports, with their file, and that have no example. */
  readonly without: readonly string[];
  /** What has an example that nothing runs: not exported there, or without a result. */
  readonly stray: readonly string[];
  readonly examples: readonly Example[];
  /** What the compiler says of the examples. */
  readonly problems: readonly string[];
}

const ROOT = resolve(import.meta.dirname, '../../..');
const INDEX = resolve(ROOT, 'core/index.ts');
/** Never written: the compiler is handed it with the examples in it. */
const TYPED = resolve(ROOT, 'tests/core/examples/typed.ts');

/** Those core is compiled with; an example may name a function in words alone. */
const OPTIONS: ts.CompilerOptions = {
  ...ts.parseJsonConfigFileContent(
    ts.readConfigFile(resolve(ROOT, 'core/tsconfig.json'), ts.sys.readFile).config,
    ts.sys,
    resolve(ROOT, 'core'),
  ).options,
  noUnusedLocals: false,
};

/** Reads the examples of core out of its docstrings, and checks their types. */
export function readExamples(): Documented {
  const program = ts.createProgram([INDEX], OPTIONS);
  const exported = exportedValues(program);
  const tagged = program
    .getSourceFiles()
    .filter(({ fileName }) => resolve(fileName).startsWith(resolve(ROOT, 'core')))
    .flatMap(({ statements }) => statements.flatMap(declared))
    .map((one) => ({ ...one, ...worked(one) }));
  const documented = new Set(tagged.filter(({ examples }) => examples.length > 0).map(whereOf));
  const functions = exported.filter(({ isFunction }) => isFunction).map(whereOf);
  const examples = tagged.flatMap((one) => one.examples);
  return {
    without: functions.filter((where) => !documented.has(where)),
    stray: tagged.filter((one) => one.unmarked || !functions.includes(whereOf(one))).map(whereOf),
    examples,
    problems: problemsOf(
      program,
      examples,
      exported.map(({ name }) => name),
    ),
  };
}

interface Declared {
  readonly name: string;
  readonly file: string;
}

const whereOf = ({ name, file }: Declared): string => `${name} (${file})`;
const fileOf = (node: ts.Node): string => node.getSourceFile().fileName.slice(ROOT.length + 1);

function exportedValues(program: ts.Program): (Declared & { readonly isFunction: boolean })[] {
  const checker = program.getTypeChecker();
  const index = checker.getSymbolAtLocation(program.getSourceFile(INDEX)!)!;
  return checker.getExportsOfModule(index).flatMap((entry) => {
    const isAlias = (entry.flags & ts.SymbolFlags.Alias) !== 0;
    const { name, valueDeclaration } = isAlias ? checker.getAliasedSymbol(entry) : entry;
    if (valueDeclaration === undefined) return [];
    const type = checker.getTypeAtLocation(valueDeclaration);
    const isFunction = type.getCallSignatures().length > 0;
    return [{ name, file: fileOf(valueDeclaration), isFunction }];
  });
}

interface Tagged extends Declared {
  readonly texts: readonly string[];
}

/** What a statement declares with an `@example`. */
function declared(statement: ts.Statement): Tagged[] {
  const nodes: readonly (ts.Node & { readonly name?: ts.Node })[] = ts.isVariableStatement(
    statement,
  )
    ? statement.declarationList.declarations
    : [statement];
  return nodes.flatMap((node) => {
    const texts = ts
      .getJSDocTags(node)
      .filter(({ tagName }) => tagName.text === 'example')
      .map(({ comment }) => ts.getTextOfJSDocComment(comment) ?? '');
    return texts.length === 0
      ? []
      : [{ name: node.name?.getText() ?? '', file: fileOf(node), texts }];
  });
}

const MARK = /^(.*?)\s*\/\/ (=>|throws) (.+)$/;
const SOURCE = /^Sources?:/;

/** An example ends at its mark; more may follow in the same tag, and last the source, in prose. */
function worked({ name, texts }: Tagged): { examples: Example[]; unmarked: boolean } {
  const examples: Example[] = [];
  let unmarked = false;
  for (const text of texts) {
    let code: string[] = [];
    for (const line of text.split('\n')) {
      const [, before, mark, expected] = MARK.exec(line) ?? [];
      code.push((before ?? line).trim());
      if (expected === undefined) continue;
      const ends = mark === '=>' ? 'result' : 'throws';
      examples.push({ of: name, code: code.join(' '), ends, expected });
      code = [];
    }
    const rest = code.join(' ').trim();
    unmarked ||= rest !== '' && !SOURCE.test(rest);
  }
  return { examples, unmarked };
}

/** The examples as a program that calls what `core/index.ts` exports. */
function problemsOf(
  core: ts.Program,
  examples: readonly Example[],
  exported: readonly string[],
): string[] {
  const blocks = examples.map(({ code }) => {
    const used = exported.filter((name) => new RegExp(`\\b${name}\\b`).test(code));
    return `{ const { ${used.join(', ')} } = core; void (${code}); }`;
  });
  const head = `import * as core from '../../../core/index.ts'; import { sample } from './sample.ts';`;
  const text = [head, 'void sample;', ...blocks].join('\n');
  const host = ts.createCompilerHost(OPTIONS);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (file) => file === TYPED || fileExists(file);
  host.getSourceFile = (file, ...rest) =>
    file === TYPED ? ts.createSourceFile(file, text, rest[0]) : getSourceFile(file, ...rest);
  const program = ts.createProgram([TYPED], OPTIONS, host, core);
  const file = program.getSourceFile(TYPED)!;
  return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].map(
    ({ start, messageText }) => {
      const line = file.getLineAndCharacterOfPosition(start ?? 0).line;
      return `${examples[line - 2]?.of}: ${ts.flattenDiagnosticMessageText(messageText, ' ')}`;
    },
  );
}
