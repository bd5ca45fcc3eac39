/**
 * The walls between the packages, and inside the engine, kept by a machine.
 *
 * Each source is parsed (with the parser that comes with Vite) and its imports are held against the
 * tables below. Plain patterns in a linter's settings would not do: a wall also depends on where a
 * relative path leads, and `units` may take types from the engine but nothing that runs.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join, posix, relative } from 'node:path';
import { parseSync, Visitor } from 'vite';

export interface Breach {
  readonly file: string;
  readonly line: number;
  readonly message: string;
}

interface Package {
  /** Packages of ours that it may import. */
  readonly ours: readonly string[];
  /** Packages of ours of which it may import types only. */
  readonly typesOf?: readonly string[];
  /** Packages of others that it may import: none of these touches a file, socket, screen or clock. */
  readonly others: readonly string[] | 'any';
  /** Whether it may import Node.js's own modules. */
  readonly node: boolean;
}

const EDGE = ['engine', 'units', 'records', 'papers'];

const PACKAGES: Readonly<Record<string, Package>> = {
  engine: {
    ours: [],
    others: ['fft.js', 'ml-levenberg-marquardt', 'ml-matrix', 'pure-rand', 'simple-statistics'],
    node: false,
  },
  units: { ours: [], typesOf: ['engine'], others: [], node: false },
  records: {
    ours: ['engine', 'units'],
    others: ['csv-parse', 'saxes', 'yaml', 'zod'],
    node: false,
  },
  papers: { ours: ['engine', 'units', 'records'], others: [], node: false },
  web: { ours: EDGE, others: 'any', node: false },
  server: { ours: EDGE, others: 'any', node: true },
  cli: { ours: EDGE, others: 'any', node: true },
  checks: { ours: EDGE, others: 'any', node: true },
  examples: { ours: EDGE, others: 'any', node: true },
  scripts: { ours: [], others: 'any', node: true },
};

/** A folder of the engine may import only itself and those above it. */
const ENGINE_ORDER = [
  'quantities',
  'numerics',
  'water',
  'pipes',
  'machine',
  'cycle',
  'site',
  'compare',
  'bench',
  'diagnose',
];

/** A test stand is not a place. */
const ENGINE_FORBIDDEN: Readonly<Record<string, readonly string[]>> = {
  bench: ['site', 'compare'],
};

/** The store of the web app, which must work and be tested without a screen. */
const WEB_STATE = /^web\/(src\/)?state\//;
const VIEW_LIBRARIES = /^(react|react-dom|wouter|react-aria-components)(\/|$)/;

/** Words that say a unit which is not SI's own, wherever they stand in a name. */
const UNIT_WORDS =
  /^((milli|centi)?lit(re|er)s?|(milli|centi|kilo)met(re|er)s?|feet|inch|inches|gallons?|psi|psig|psia|gpm|lpm|(kilo|mega|giga)pascals?|minutes|hours|days|fahrenheit|pounds|ounces)$/;
/** Words that say a unit only at the end of a name: a `footValve` is a part, `liftFoot` is not. */
const UNIT_LAST_WORDS =
  /^(bars?|foot|ft|yards?|miles?|minute|hour|day|pound|ounce|grams?|mm|cm|km|kpa|mpa|gpa|lbf?)$/;

/** A published table is copied as its source prints it, in its source's unit, and turned to SI there. */
const PUBLISHED_TABLE = /^engine\/[^/]+\/tables\//;

const TEST_FILE = /\.(test|bench)\.tsx?$/;
/** Tests that several test files run, each on what it brings. */
const CONTRACT = /(^|\/)contract\.ts$/;
/** Test tools, which only a test may import. */
const TEST_PACKAGES = [
  'js-quantities',
  'vitest',
  'fast-check',
  'tinybench',
  '@playwright/test',
  '@axe-core/playwright',
];
const OURS = /^(?:@fallwright\/([^/]+)|(fallwright))(\/.*)?$/;

/** Every breach of the walls in one source. `file` is its path from the root of the clone. */
export function breaches(file: string, source: string): readonly Breach[] {
  const { program, errors } = parseSync(file, source);
  const found: Breach[] = [];
  const report = (offset: number, message: string): void => {
    found.push({ file, line: source.slice(0, offset).split('\n').length, message });
  };
  if (errors[0]) report(0, `cannot be parsed: ${errors[0].message}`);

  const checkImport = (offset: number, target: string, isType: boolean): void => {
    const message = importBreach(file, target, isType);
    if (message !== undefined) report(offset, message);
  };
  const isEngineSource = file.startsWith('engine/') && !TEST_FILE.test(file);
  const namesAreSI = isEngineSource && !PUBLISHED_TABLE.test(file);
  const namesReported = new Set<string>();
  const checkName = (offset: number, name: string): void => {
    if (!namesAreSI || namesReported.has(name) || !carriesUnit(name)) return;
    namesReported.add(name);
    report(offset, `${name} carries a unit in its name; the engine is plain SI, say the quantity`);
  };

  new Visitor({
    ImportDeclaration(node) {
      checkImport(node.start, node.source.value, node.importKind === 'type');
    },
    ExportNamedDeclaration(node) {
      if (node.source) checkImport(node.start, node.source.value, node.exportKind === 'type');
    },
    ExportAllDeclaration(node) {
      report(node.start, 'export * hides what a package gives; list the names');
      checkImport(node.start, node.source.value, node.exportKind === 'type');
    },
    ImportExpression(node) {
      const { source: target } = node;
      if (target.type === 'Literal' && typeof target.value === 'string') {
        checkImport(node.start, target.value, false);
      }
    },
    TSImportType(node) {
      checkImport(node.start, node.source.value, true);
    },
    Identifier(node) {
      checkName(node.start, node.name);
    },
    NewExpression(node) {
      const isClock = node.callee.type === 'Identifier' && node.callee.name === 'Date';
      if (isEngineSource && isClock && node.arguments.length === 0) {
        report(node.start, 'new Date() reads the clock; the engine has none, pass the time in');
      }
    },
    CallExpression(node) {
      if (isEngineSource && node.callee.type === 'Identifier' && node.callee.name === 'Date') {
        report(node.start, 'Date() reads the clock; the engine has none, pass the time in');
      }
    },
    MemberExpression(node) {
      if (!isEngineSource || node.object.type !== 'Identifier') return;
      const { property } = node;
      const member =
        property.type === 'Identifier'
          ? property.name
          : property.type === 'Literal' && property.value;
      if (node.object.name === 'Date' && member === 'now') {
        report(node.start, 'Date.now reads the clock; the engine has none, pass the time in');
      }
      if (node.object.name === 'Math' && member === 'random') {
        report(node.start, 'Math.random cannot be repeated; pass a seeded generator in');
      }
    },
  }).visit(program);
  return found;
}

/** What is wrong with one import, or undefined. */
function importBreach(file: string, target: string, isType: boolean): string | undefined {
  const [folder = ''] = file.split('/');
  const isTest =
    TEST_FILE.test(file) ||
    CONTRACT.test(file) ||
    /^web\/(tests|bench)\//.test(file) ||
    /\.config\.ts$/.test(file);
  const wall = PACKAGES[folder];
  // Settings at the root belong to no package.
  if (!file.includes('/')) return undefined;
  if (wall === undefined) return `${folder}/ is not in the table of packages in scripts/walls.ts`;
  if (target.startsWith('.')) return relativeBreach(file, target, isTest);

  const ours = OURS.exec(target);
  if (ours) {
    const name = ours[1] ?? 'cli';
    if (ours[3]) return `${target}: import from the entry of the package, not from inside it`;
    if (wall.ours.includes(name)) return undefined;
    if (wall.typesOf?.includes(name)) {
      if (isType || isTest) return undefined;
      return `${folder} may take only types from ${name}: write \`import type\``;
    }
    return `${folder} may not import ${name}`;
  }
  if (isBuiltin(target)) {
    if (wall.node || isTest) return undefined;
    return `${folder} may not import ${target}: it touches no file, socket, screen or clock`;
  }
  if (WEB_STATE.test(file) && VIEW_LIBRARIES.test(target)) {
    return `the store may not import ${target}: it must work without a screen`;
  }
  const name = target.split('/', target.startsWith('@') ? 2 : 1).join('/');
  if (TEST_PACKAGES.includes(name)) {
    return isTest || folder === 'checks' ? undefined : `only a test may import ${name}`;
  }
  if (wall.others === 'any' || wall.others.includes(name)) return undefined;
  return `${folder} may not import ${name}; if it touches no file, socket, screen or clock, add it in scripts/walls.ts`;
}

/** A relative path must stay in its package and, in the engine, must not lead downwards. */
function relativeBreach(file: string, target: string, isTest: boolean): string | undefined {
  const path = posix.join(posix.dirname(file), target);
  const [folder = '', inside = ''] = file.split('/');
  const [targetFolder, targetInside = ''] = path.split('/');
  // The tests, measurements and settings of the web app run on Node.js and use the launchers' own functions.
  if (folder === 'web' && isTest && targetFolder === 'scripts') return undefined;
  if (targetFolder !== folder) return `${target} leaves ${folder}; import the entry of the package`;
  if (folder !== 'engine') return undefined;

  const isRootFile = file.split('/').length === 2;
  if (isRootFile && (inside === 'index.ts' || isTest)) return undefined;
  const place = engineFolder(inside);
  const targetPlace = engineFolder(targetInside);
  const height = ENGINE_ORDER.indexOf(place);
  const targetHeight = ENGINE_ORDER.indexOf(targetPlace);
  if (height === -1) return `engine/${inside} is not in the order of folders in scripts/walls.ts`;
  if (targetHeight === -1) return `${target} is not in the order of folders in scripts/walls.ts`;
  if (targetHeight > height) return `${place} may not import ${targetPlace}, which stands below it`;
  if (ENGINE_FORBIDDEN[place]?.includes(targetPlace))
    return `${place} may not import ${targetPlace}`;
  return undefined;
}

/** `quantities.ts` stands in the order as a folder does. */
function engineFolder(name: string): string {
  return name.replace(/\.ts$/, '');
}

/** Whether a name says a unit: `boreMillimetres`, `litresPerDay`, `LIFT_FEET`. */
function carriesUnit(name: string): boolean {
  const words = name
    .replace(/([a-z0-9])([A-Z])/g, '$1_$2')
    .toLowerCase()
    .split('_')
    .filter((word) => word !== '');
  const last = words.length > 1 ? words.at(-1) : undefined;
  return (
    words.some((word) => UNIT_WORDS.test(word)) ||
    (last !== undefined && UNIT_LAST_WORDS.test(last))
  );
}

function sourceFiles(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (/^(node_modules|dist|test-results|playwright-report|\..*)$/.test(entry.name)) return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourceFiles(path);
    return /\.(ts|tsx|mts|mjs|js)$/.test(entry.name) ? [path] : [];
  });
}

if (process.argv[1] === import.meta.filename) {
  const root = join(import.meta.dirname, '..');
  const files = sourceFiles(root);
  const all = files.flatMap((path) =>
    breaches(relative(root, path).replaceAll('\\', '/'), readFileSync(path, 'utf8')),
  );
  for (const { file, line, message } of all) console.error(`${file}:${line}: ${message}`);
  console.log(`${files.length} files, ${all.length} breaches of the walls`);
  if (files.length === 0 || all.length > 0) process.exitCode = 1;
}
