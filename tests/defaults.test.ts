import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const SRC = new URL('../src/', import.meta.url).pathname;

/** Calls that look something up, and may find nothing. */
const LOOKUPS = new Set(['get', 'at', 'find', 'findLast', 'shift', 'pop', 'codePointAt']);

const bare = (node: ts.Expression): ts.Expression =>
  ts.isParenthesizedExpression(node) || ts.isNonNullExpression(node) ? bare(node.expression) : node;

/** Whether an expression reads an entry, or what an entry has. */
function looksUp(expression: ts.Expression): boolean {
  const node = bare(expression);
  if (ts.isElementAccessExpression(node)) return true;
  if (ts.isPropertyAccessExpression(node)) return looksUp(node.expression);
  if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return false;
  const { name, expression: of } = node.expression;
  return LOOKUPS.has(name.text) || looksUp(of);
}

/** A value that stands for nothing found and says nothing of it; a constant with a name says what it is. */
function isSilent(expression: ts.Expression): boolean {
  const node = bare(expression);
  if (ts.isAsExpression(node)) return isSilent(node.expression);
  if (ts.isPrefixUnaryExpression(node)) return isSilent(node.operand);
  return (
    ts.isNumericLiteral(node) ||
    ts.isStringLiteralLike(node) ||
    node.kind === ts.SyntaxKind.TrueKeyword ||
    node.kind === ts.SyntaxKind.FalseKeyword ||
    (ts.isIdentifier(node) && (node.text === 'Infinity' || node.text === 'NaN')) ||
    (ts.isPropertyAccessExpression(node) && node.expression.getText() === 'Number') ||
    (ts.isArrayLiteralExpression(node) && node.elements.every(isSilent)) ||
    (ts.isObjectLiteralExpression(node) &&
      node.properties.every((one) => ts.isPropertyAssignment(one) && isSilent(one.initializer)))
  );
}

/** An entry taken for there without being asked; to `unknown` says nothing of it. */
const isCast = (node: ts.Node): boolean =>
  ts.isAsExpression(node) &&
  node.type.kind !== ts.SyntaxKind.UnknownKeyword &&
  ts.isElementAccessExpression(bare(node.expression));

/** What is not found is left out, as the name of the call says. */
const isLeftOut = (node: ts.BinaryExpression): boolean => {
  let own: ts.Node = node.parent;
  while (ts.isParenthesizedExpression(own) || ts.isConditionalExpression(own)) own = own.parent;
  const { parent } = own;
  return (
    ts.isArrowFunction(own) &&
    ts.isCallExpression(parent) &&
    ts.isPropertyAccessExpression(parent.expression) &&
    parent.expression.name.text === 'flatMap' &&
    node.right.getText() === '[]'
  );
};

/** Every silent default and cast of an entry in a source, as `file: text`. */
function silentIn(name: string, text: string): string[] {
  const source = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const silent =
      ts.isBinaryExpression(node) &&
      node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken &&
      looksUp(node.left) &&
      isSilent(node.right) &&
      !isLeftOut(node);
    if (silent || isCast(node)) found.push(`${name}: ${node.getText().replace(/\s+/g, ' ')}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Where none is what is meant, and why. */
const MEANT: Readonly<Record<string, readonly string[]>> = {
  'The functions that say it.': [
    'list/at.ts: list[index] as number',
    'list/grouped.ts: groups.get(key) ?? []',
    'list/totals.ts: totals.get(key) ?? 0',
  ],
  'Nothing is gathered yet under that key.': [
    'cutting/sheets/blocks.ts: beside?.[slabWay.along] ?? 0',
    'fastening/planFastening.ts: use.get(key)?.count ?? 0',
    'finish/jobs.ts: before?.[of] ?? 0',
    'editor/edit/ids.ts: design[list] ?? []',
    'finish/planFinish.ts: seen.get(finish) ?? { face: 0, edge: 0 }',
    'job/ids.ts: next.get(stem) ?? 0',
    'job/reading.ts: planned.get(part) ?? 0',
    'job/rest.ts: had.get(wood.stock) ?? { count: 0, cost: 0 }',
    'joinery/overlap.ts: shared.get(key)?.region ?? []',
    'layout/solve/network.ts: members.get(at) ?? { parts: [], links: [] }',
    'output/json/cutFields.ts: followers.get(piece.part) ?? []',
    'output/packet/fastenerMarks.ts: ways.get(key)?.count ?? 0',
    'plan/supplyLines.ts: byPaper.get(id) ?? { pages: 0, length: 0 }',
  ],
  'Nothing is found yet: the search begins with the first.': ['geometry/trueArea.ts: lasts.get(curve) ?? 0'],
  'A table by the own kind of what it is asked for, which the compiler cannot follow through a union.': [
    'design/edit/edit.ts: APPLY[edit.kind] as (design: Design, edit: Edit) => EditResult',
    'editor/control/form/formField.ts: value[name] as Part',
    'editor/pane/part/MemberFields.tsx: OWN_FIELDS[member.kind] as ComponentType<{ part: Repeatable }>',
    'editor/pane/part/PartFields.tsx: KIND_FIELDS[part.kind] as ComponentType<{ part: Part }>',
    'editor/pane/part/shapeFields.ts: (shape as Readonly<Record<string, unknown>>)[name] as never',
    'plan/words/words.ts: words.rules[rule.kind] as (rule: Rule, result: number | null, say: RuleSay) => string',
  ],
  'What nothing is said of.': [
    'job/acts.ts: cutting.basis?.[stock] ?? 0',
    'job/rest.ts: had.get(bound.stock) ?? { count: 0, cost: 0 }',
    'job/work.ts: said.get(id)?.at ?? 0',
  ],
  'A field that is empty until something is typed, or hidden where there is none.': [
    'editor/pane/bed/bedFields.ts: beside[side] ?? 0',
    'editor/pane/wood/OwnedList.tsx: owned.defects.at(-1)?.to ?? 0',
    'editor/pane/wood/PriceRows.tsx: rows.at(-1) ?? { length: 2438.4, width: 1219.2, price: 0 }',
    'editor/pane/wood/SupplyPrices.tsx: primer.find((p) => p.container === id)?.price ?? 0',
    'editor/pane/wood/priceFields.ts: tables().screws.find(({ id }) => id === screw)?.lengths ?? []',
  ],
  'What nobody chose: the first of its kind, or as it ships.': [
    "command/arguments.ts: options['--language'] ?? 'en'",
    "editor/pane/lettering/FontChooser.tsx: lines.map((l) => l.text).find((text) => text.trim() !== '') ?? 'ABC'",
    "editor/pane/part/DivideSection.tsx: face.levels.at(-1)?.id ?? 'rim'",
    "editor/state/theme.ts: THEMES.find((theme) => theme === stored) ?? 'auto'",
  ],
  'Most members have nothing of their own.': ['editor/edit/members.ts: of.overrides[keyOf(at)] ?? {}'],
  'Drawn before its plan or its look has come, or bare.': [
    "finish/lit/appearance.ts: looks.parts.get(part.id) ?? '#888888'",
    "editor/pane/parts/useTreeRows.ts: facts.get(id) ?? ''",
    "editor/pane/parts/useTreeRows.ts: looks.parts.get(p.id) ?? ''",
    "editor/control/PartShapes.tsx: colors.get(part.finish ?? '') ?? 'var(--rim)'",
  ],
  'The face, where no part is there to lie on or to be ruled against.': [
    "editor/edit/newRule.ts: design.parts.find((other) => other.id !== part.id)?.id ?? 'face'",
    "editor/edit/newRule.ts: layout.parts.find((laid) => laid.part === part.id)?.on ?? 'face'",
    "layout/arrange/space.ts: first?.find((id) => others.every((chain) => chain.includes(id))) ?? 'face'",
  ],
  'A print with its paper to itself.': [
    'plan/patternRequests.ts: papersOf(parts).find(([first]) => first.id === id) ?? []',
  ],
  'Nothing that follows it, or nothing else that is held.': [
    'editor/gesture/snapping.ts: held[axis]?.next() ?? []',
    'layout/solve/network.ts: followers.get(id) ?? []',
  ],
  'Bare wood of no known material, looked for by a name that nothing has.': [
    'editor/pane/paint/OnWoods.tsx: stocks.get(made.stock)?.material ?? []',
    "finish/jobs.ts: input.materials.get(stock?.material ?? '')?.edgeThirst ?? 1",
    "finish/look.ts: stocks.get(stock ?? '')?.material ?? ''",
  ],
  'A run of one point has no legs, a rule that does not hold no result, an end sawn away no length.': [
    'editor/canvas/CanvasFields.tsx: layout.rules.find((state) => state.id === rule.id)?.result ?? 0',
    'editor/drawing/drawPart.ts: part.legs[0]?.width ?? 0',
    'fastening/planFastening.ts: legsOf(laid)[0]?.width ?? 0',
    'joinery/shown.ts: draft.edges[of] ?? 0',
  ],
  'What is stopped at may have no width: the face, or an outline.': [
    'joinery/spans.ts: widths.get(own.with) ?? 0',
  ],
  'A sign without letters has no layers, a layer that is not cut no stencil, a sliver no letter.': [
    'lettering/painted.ts: stencils.layers.find(({ role }) => role === layer.role)?.stencil.cut ?? []',
  ],
  'What is painted on the face has no solid, and is painted first.': [
    'finish/jobs.ts: rank.get(a.part) ?? 0',
    'finish/jobs.ts: rank.get(b.part) ?? 0',
  ],
  'A part that the ratio does not reach counts once.': ['layout/rule/graded.ts: rule.ratio[i] ?? 1'],
  'A font without a private part, a package without ranges.': [
    'editor/shipped/letters.ts: known.get(owner) ?? {}',
    'lettering/font/guard-cff.ts: dict.get(PRIVATE) ?? []',
  ],
  'A stock that no table has is not thick; the part tells of it.': [
    'design/assembly/stock.ts: stocks.get(id)?.thickness ?? 0',
  ],
  'A question that is not answered yet.': ["editor/pane/part/BuiltFields.tsx: answers[name] ?? ''"],
  'A figure that a check leaves out is not told.': ["plan/words/words.ts: check.figures[key] ?? ''"],
  'Only what is no warning is listed.': ["joinery/chosen.ts: SEVERITY[why] ?? 'warning'"],
  'A board that nothing is cut from is drawn as a line.': [
    'editor/pane/wood/BoardCard.tsx: board.cuts.map((c) => pieces.get(c.piece)?.width).find((w) => w !== undefined) ?? 0',
  ],
};

/** Worth parsing: most files have neither. */
const MAY_BE = /[\])][\w.?()]*\s*\?\?\s*(?:['"`\d[{(-]|true|false|Infinity|NaN|Number\.)|\] as /;

const found = readdirSync(SRC, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .flatMap((entry) => {
    const file = join(entry.parentPath, entry.name);
    const text = readFileSync(file, 'utf8');
    return MAY_BE.test(text) ? silentIn(relative(SRC, file), text) : [];
  });

describe('what is looked up', () => {
  it('passes no silent zero or nothing on where it is not found, but where that is what is meant', () => {
    expect([...new Set(found)].sort()).toEqual(Object.values(MEANT).flat().sort());
  });
});
