import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const project = path.resolve(import.meta.dirname, '../..');

/** Rooms of shared-lib from the ground up; a room may import from rooms of a lower floor and from itself. */
const floors: string[][] = [
  ['quantity', 'statistics', 'figure', 'calculation', 'picture'],
  ['method'],
  ['surface-energy', 'bond-strength', 'fade', 'colour', 'mechanical', 'cure', 'release', 'liquid'],
  ['registry', 'plan', 'approval', 'material', 'equipment'],
  ['notebook'],
  ['report', 'trial'],
];

/** Arrows inside a floor, and type-only arrows upwards that carry the shape of shared data, each with its reason. */
const allowed = new Set([
  // A figure is part of a result; the ground floor shares these shapes.
  'calculation -> figure',
  'figure -> calculation',
  'quantity -> calculation',
  'statistics -> calculation',
  'statistics -> quantity',
  'statistics -> figure',
  'figure -> quantity',
  'calculation -> quantity',
  'picture -> calculation',
  'picture -> statistics',
  // Colour differences are what fading is measured by; a mechanical test reads traces as the peel does.
  'fade -> colour',
  'mechanical -> bond-strength',
]);

interface Import {
  from: string;
  to: string;
  specifier: string;
  typeOnly: boolean;
}

const imports = ['shared-lib', 'electron', 'renderer'].flatMap(importsBelow);

describe('the direction of imports', () => {
  it('finds the imports it is to check', () => {
    expect(imports.length).toBeGreaterThan(50);
  });

  it('is renderer → shared-lib ← electron', () => {
    const crossing = imports.filter(({ from, to }) => {
      const [source, target] = [room(from), room(to)];
      return target !== '' && source !== target && target !== 'shared-lib';
    });
    expect(crossing.map(show)).toEqual([]);
  });

  it('keeps Node, Electron and the window out of shared-lib', () => {
    const packages = imports.filter(({ from, to }) => room(from) === 'shared-lib' && to === '');
    const impure = packages.filter(({ specifier, typeOnly }) => !pure(specifier) && !(specifier === 'chart.js' && typeOnly));
    expect(impure.map(show)).toEqual([]);
  });

  it('goes down the floors inside shared-lib', () => {
    const upwards = imports.filter(({ from, to }) => {
      if (room(from) !== 'shared-lib' || room(to) !== 'shared-lib') return false;
      const [source, target] = [from.split('/')[1]!, to.split('/')[1]!];
      if (source === target || source.endsWith('.ts')) return false;
      return floor(target) >= floor(source) && !allowed.has(`${source} -> ${target}`);
    });
    expect(upwards.map(show)).toEqual([]);
  });

  it('has no circle of files', () => {
    expect(firstCircle(imports)).toEqual([]);
  });
});

function pure(specifier: string): boolean {
  return specifier === 'zod' || specifier.startsWith('@stdlib/') || specifier.startsWith('@noble/hashes');
}

function floor(name: string): number {
  const index = floors.findIndex((names) => names.includes(name));
  if (index === -1) throw new Error(`shared-lib/${name} has no floor; give it one in tests/unit/architecture.test.ts`);
  return index;
}

function room(file: string): string {
  return file.split('/')[0]!;
}

function show({ from, specifier }: Import): string {
  return `${from} imports ${specifier}`;
}

function importsBelow(folder: string): Import[] {
  const files = readdirSync(path.join(project, folder), { recursive: true, encoding: 'utf8' });
  return files
    .filter((file) => /\.(ts|svelte)$/.test(file))
    .flatMap((file) => importsOf(path.posix.join(folder, file.replaceAll('\\', '/'))));
}

function importsOf(file: string): Import[] {
  const text = readFileSync(path.join(project, file), 'utf8');
  const script = file.endsWith('.svelte') ? [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((match) => match[1]).join('\n') : text;
  const source = ts.createSourceFile(file, script, ts.ScriptTarget.Latest, true);
  const found: Import[] = [];
  const add = (specifier: string, typeOnly: boolean) => {
    const to = specifier.startsWith('.') ? path.posix.normalize(path.posix.join(path.posix.dirname(file), specifier)) : '';
    found.push({ from: file, to, specifier, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      add(node.moduleSpecifier.text, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
      add(node.moduleSpecifier.text, node.isTypeOnly);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && ts.isStringLiteral(node.arguments[0]!)) {
      add(node.arguments[0].text, false);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The files of one circle of imports that exist at run time (type-only ones vanish), or []. */
function firstCircle(all: Import[]): string[] {
  const arrows = new Map<string, string[]>();
  for (const { from, to, typeOnly } of all) if (to && !typeOnly) arrows.set(from, [...(arrows.get(from) ?? []), to]);
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string): string[] => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return [];
    path.push(file);
    for (const next of arrows.get(file) ?? []) {
      const circle = visit(next);
      if (circle.length > 0) return circle;
    }
    path.pop();
    done.add(file);
    return [];
  };
  for (const file of arrows.keys()) {
    const circle = visit(file);
    if (circle.length > 0) return circle;
  }
  return [];
}
