/**
 * A YAML text as data, with the place of every field kept, so that each problem can say its line.
 *
 * The text comes from anyone: it may be binary, huge, or built to blow up when its aliases are followed.
 */
import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
} from 'yaml';
import { fieldName, type Path, type Problem } from './problem.ts';

/** Judgement: a person repeats a pipe by alias a few times at most. */
const MOST_ALIASES = 50;

/** After a break in the form of a text most further breaks are echoes of the first. */
const MOST_BREAKS = 5;

/** How the parser reports, among its errors, that the nesting was deeper than the stack. */
const STACK_IS_FULL = /call stack|too much recursion/i;

export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface YamlText {
  readonly data: unknown;
  /** Where a field stands, or the nearest map or list round it when it does not stand there. */
  readonly placeOf: (path: Path) => Place;
  /** Where the key of a field stands. */
  readonly placeOfKey: (path: Path) => Place;
}

export type YamlRead =
  | { readonly ok: true; readonly text: YamlText; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What kind of file a text is meant to be. */
export interface TextKind {
  /** The record in it: `site`. */
  readonly called: string;
  /** Its format: `site@1`. */
  readonly format: string;
  /** Letters of the longest such text. */
  readonly longest: number;
}

/** Problems may come with data: a key that is written twice leaves the rest of the file readable. */
export function readYaml(source: string, kind: TextKind): YamlRead {
  const notText = notATextFile(source, kind);
  if (notText) return refusal(notText);
  const tooDeep = `This file is nested or repeated beyond what any ${kind.called} needs. Write it out plainly.`;
  const lines = new LineCounter();
  let document: Document.Parsed;
  let data: unknown;
  try {
    document = parseDocument(source, {
      lineCounter: lines,
      prettyErrors: false,
      logLevel: 'error',
    });
    data = document.errors.every(isDuplicate)
      ? document.toJS({ maxAliasCount: MOST_ALIASES })
      : undefined;
  } catch (cause) {
    // The parser throws on aliases that multiply and on nesting deeper than the stack: both are the text's doing.
    if (cause instanceof ReferenceError || cause instanceof RangeError) {
      return refusal(tooDeep);
    }
    throw cause;
  }
  const at = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  if (document.errors.some(({ message }) => STACK_IS_FULL.test(message))) return refusal(tooDeep);
  const problems = document.errors.map(
    (error): Problem => ({
      kind: isDuplicate(error) ? 'duplicateField' : 'unreadable',
      field: isDuplicate(error) ? keyAt(document, error.pos[0]) : '',
      ...at(error.pos[0]),
      message: plainWords(error.code, error.message, kind),
    }),
  );
  if (!document.errors.every(isDuplicate)) return { ok: false, problems: onePerLine(problems) };
  return {
    ok: true,
    problems,
    text: {
      data,
      placeOf: (path) => at(nodeAt(document, path)?.range?.[0] ?? 0),
      placeOfKey: (path) =>
        at(keyNode(document, path)?.range?.[0] ?? nodeAt(document, path)?.range?.[0] ?? 0),
    },
  };
}

function onePerLine(problems: readonly Problem[]): readonly Problem[] {
  const firsts = problems.filter(
    ({ line }, index) => problems.findIndex((other) => other.line === line) === index,
  );
  return firsts.slice(0, MOST_BREAKS);
}

function refusal(message: string): YamlRead {
  return { ok: false, problems: [{ kind: 'unreadable', field: '', line: 1, column: 1, message }] };
}

function notATextFile(source: string, kind: TextKind): string | undefined {
  const { called, format, longest } = kind;
  if (source.length > longest) {
    return `This file is longer than ${longest / 1024} kB; a ${called} file is a short text. Is it the right file?`;
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are how a binary file shows
  if (/[\u0000-\u0008\u000e-\u001f\ufffd]/.test(source)) {
    return `This is not a text file. A ${called} file is a plain text (UTF-8) that begins with: fallwright: ${format}`;
  }
  if (source.trim() === '') {
    return `This file is empty. A ${called} file begins with: fallwright: ${format}`;
  }
  return undefined;
}

function isDuplicate(error: { readonly code: string }): boolean {
  return error.code === 'DUPLICATE_KEY';
}

function plainWords(code: string, message: string, { called }: TextKind): string {
  switch (code) {
    case 'DUPLICATE_KEY':
      return 'This field is written twice. Keep one of the two.';
    case 'TAB_AS_INDENT':
      return 'A tab stands at the start of this line. Indent with spaces.';
    case 'MULTIPLE_DOCS':
      return `A second document begins here. Keep one ${called} in one file.`;
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'A second colon stands on this line. Put the text after the first one in quotes, or begin a new line.';
    case 'BAD_INDENT':
      return 'A bracket or brace that was opened before here is not closed, or this line needs more spaces in front.';
    case 'MISSING_CHAR':
      return `Something is not closed before here (${message.toLowerCase()}). Close every quote, bracket and brace.`;
    default:
      return `This cannot be read as YAML: ${message.charAt(0).toLowerCase()}${message.slice(1)}.`;
  }
}

/** The node at a path, or the deepest one on the way to it. Single things may stand where a list of one is meant. */
function nodeAt(document: Document, path: Path): Node | null {
  let node = document.contents as Node | null;
  for (const step of path) {
    const inside = resolved(document, node);
    let next: unknown;
    if (typeof step === 'number') {
      if (!isSeq(inside)) continue;
      next = inside.items[step];
    } else {
      next = isMap(inside)
        ? inside.items.find((pair) => keyText(pair.key) === step)?.value
        : undefined;
    }
    if (!next) return node;
    node = next as Node;
  }
  return node;
}

function keyNode(document: Document, path: Path): Node | undefined {
  const parent = resolved(document, nodeAt(document, path.slice(0, -1)));
  const key = path.at(-1);
  return isMap(parent)
    ? (parent.items.find((pair) => keyText(pair.key) === key)?.key as Node | undefined)
    : undefined;
}

function resolved(document: Document, node: Node | null): unknown {
  return isAlias(node) ? node.resolve(document) : node;
}

function keyText(key: unknown): string {
  return isScalar(key) ? String(key.value) : String(key);
}

/** The field name of the key that stands at an offset. */
function keyAt(document: Document, offset: number): string {
  const search = (node: unknown, path: Path): string | undefined => {
    if (isMap(node)) {
      for (const pair of node.items) {
        const here = [...path, keyText(pair.key)];
        if ((pair.key as Node | null)?.range?.[0] === offset) return fieldName(here);
        const found = search(pair.value, here);
        if (found !== undefined) return found;
      }
    }
    if (isSeq(node)) {
      for (const [index, item] of node.items.entries()) {
        const found = search(item, [...path, index]);
        if (found !== undefined) return found;
      }
    }
    return undefined;
  };
  return search(document.contents, []) ?? '';
}
