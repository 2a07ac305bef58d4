/**
 * Which names of fields something else than our own code may meet, as the compiler understands the sources: where a
 * field of that name is one of the language, of the browser or of a package, where it is asked for by a text, or where it is
 * handed to what takes anything, such as `JSON.stringify`.
 */
import { join } from 'node:path';
import * as ast from 'typescript/unstable/ast';
import { API, type Checker, type Program, type Symbol as Sign, type Type, TypeFlags } from 'typescript/unstable/sync';
import { projectFolder } from '../../src/build.mjs';

const { SyntaxKind: Kind } = ast;
const SOURCES = join(projectFolder, 'src');
const ANYTHING = TypeFlags.Any | TypeFlags.Unknown | TypeFlags.NonPrimitive;
/** What is told by the answer of these is only whether there is one. */
const ASKING = new Set(['find', 'findIndex', 'findLast', 'filter', 'some', 'every']);

/** Every name that is met elsewhere, with one place where it is. @param files sources, from the project's folder */
export function fieldsElsewhere(files: readonly string[]): ReadonlyMap<string, string> {
  const api = new API({ cwd: projectFolder });
  try {
    const config = join(SOURCES, 'workbook/tsconfig.json');
    const project = api.updateSnapshot({ openProject: config }).getProject(config);
    if (!project) throw new Error(`${config} cannot be read`);
    const found = new Map<string, string>();
    for (const file of files) new Finder(project.program, project.checker, file, found).find();
    return found;
  } finally {
    api.close();
  }
}

class Finder {
  private readonly listed = new Set<string>();

  constructor(
    private readonly program: Program,
    private readonly checker: Checker,
    private readonly file: string,
    private readonly found: Map<string, string>,
  ) {}

  find(): void {
    const source = this.program.getSourceFile(join(projectFolder, this.file));
    if (!source) throw new Error(`${this.file} is not in the project`);
    const visit = (node: ast.Node, above: readonly ast.Node[]) => {
      this.look(node, above);
      node.forEachChild((child) => visit(child, [node, ...above]));
    };
    visit(source, []);
  }

  private look(node: ast.Node, above: readonly ast.Node[]): void {
    if (ast.isPropertyAccessExpression(node)) this.notOurs(node.name.text, this.checker.getSymbolAtLocation(node.name));
    if (ast.isObjectBindingPattern(node)) this.lookAtPattern(node);
    if (ast.isObjectLiteralExpression(node)) this.lookAtObject(node);
    if (ast.isElementAccessExpression(node)) this.asked(node.argumentExpression);
    if (ast.isComputedPropertyName(node)) this.asked(node.expression);
    if (ast.isBinaryExpression(node) && node.operatorToken.kind === Kind.InKeyword) this.lookAtIn(node);
    if (ast.isAsExpression(node)) this.lookAtSaid(node);
    if (ast.isExpression(node)) this.lookAtGiven(node, above);
  }

  private lookAtPattern(node: ast.ObjectBindingPattern): void {
    for (const element of node.elements) {
      const name = element.propertyName ?? element.name;
      if (element.dotDotDotToken || !name || !ast.isIdentifier(name)) continue;
      for (const type of this.partsOf(this.checker.getTypeAtLocation(node))) this.fieldOf(type, name.text);
    }
  }

  private lookAtObject(node: ast.ObjectLiteralExpression): void {
    const names = node.properties.flatMap((part) => {
      const name = ast.isSpreadAssignment(part) ? undefined : part.name;
      return name && ast.isIdentifier(name) ? [name.text] : [];
    });
    for (const type of this.partsOf(this.checker.getContextualType(node))) {
      for (const name of names) this.fieldOf(type, name);
    }
  }

  private lookAtIn({ left, right }: ast.BinaryExpression): void {
    const isLiteral = ast.isStringLiteral(left);
    this.asked(left);
    if (!isLiteral) this.all(this.checker.getTypeAtLocation(right), false);
  }

  /** What is only said to be of a type may have come from outside, or be asked by texts from there on. */
  private lookAtSaid({ expression, type }: ast.AsExpression): void {
    const said = this.checker.getTypeAtLocation(type);
    const own = this.partsOf(this.checker.getTypeAtLocation(expression));
    const isFromOutside = own.some(
      (one) => one.flags & ANYTHING || (one.flags & TypeFlags.Object && !this.isOursOrList(one)),
    );
    if (isFromOutside) this.all(said, true);
    if (this.partsOf(said).some((one) => this.isByText(one))) for (const one of own) this.all(one, false);
  }

  /** A value that is given to what asks for its fields by texts. */
  private lookAtGiven(node: ast.Expression, above: readonly ast.Node[]): void {
    if (!ast.isIdentifier(node) && !ast.isPropertyAccessExpression(node) && !ast.isCallExpression(node)) return;
    if (!isGiven(node, above)) return;
    const own = this.partsOf(this.checker.getTypeAtLocation(node)).filter(({ flags }) => flags & TypeFlags.Object);
    if (own.length === 0) return;
    for (const type of this.partsOf(this.checker.getContextualType(node))) {
      if (type.flags & ANYTHING) for (const one of own) this.all(one, true);
      else if (this.isByText(type)) for (const one of own) this.all(one, false);
    }
  }

  /** Every name that a text may be, which is asked for. */
  private asked(node: ast.Expression): void {
    for (const type of this.partsOf(this.checker.getTypeAtLocation(node))) {
      if (type.isStringLiteralType()) this.tell(type.value);
    }
  }

  /** One field of a type, where that is not one of ours, or of what has any. */
  private fieldOf(type: Type, name: string): void {
    if (type.flags & ANYTHING) this.tell(name);
    if (!(type.flags & TypeFlags.Object)) return;
    const field = this.checker.getPropertyOfType(type, name);
    if (field) this.notOurs(name, field);
    else if (this.isByText(type)) this.tell(name);
  }

  private notOurs(name: string, sign: Sign | undefined): void {
    if (!sign || !isOurs(sign)) this.tell(name);
  }

  /** All fields of a type that are ours. @param isDeep those of their values too */
  private all(whole: Type | undefined, isDeep: boolean): void {
    for (const type of this.partsOf(whole)) {
      const key = `${type.id} ${isDeep}`;
      if (!(type.flags & TypeFlags.Object) || this.listed.has(key)) continue;
      this.listed.add(key);
      if (this.checker.isArrayLikeType(type)) {
        if (isDeep && type.isTypeReference()) for (const of of this.checker.getTypeArguments(type)) this.all(of, true);
        continue;
      }
      for (const field of this.checker.getPropertiesOfType(type).filter(isOurs)) {
        this.tell(field.name);
        if (isDeep) for (const inside of this.typesIn(field)) this.all(inside, true);
      }
    }
  }

  /** The types that a field is declared with; of a list of fixed length, which this compiler cannot hand over, those in it. */
  private typesIn(field: Sign): readonly (Type | undefined)[] {
    try {
      return [this.checker.getTypeOfSymbol(field)];
    } catch {
      const found: (Type | undefined)[] = [];
      const visit = (node: ast.Node) => {
        if (ast.isTypeReferenceNode(node)) found.push(this.checker.getTypeAtLocation(node));
        node.forEachChild(visit);
      };
      field.valueDeclaration?.resolve()?.forEachChild(visit);
      return found;
    }
  }

  private isOursOrList(type: Type): boolean {
    const sign = type.getSymbol();
    return this.checker.isArrayLikeType(type) || (sign !== undefined && isOurs(sign));
  }

  private isByText(type: Type): boolean {
    if (!(type.flags & TypeFlags.Object)) return false;
    return this.checker.getIndexInfosOfType(type).some(({ keyType }) => keyType.flags & TypeFlags.String);
  }

  private partsOf(type: Type | undefined): readonly Type[] {
    if (!type) return [];
    if (type.isUnionType() || type.isIntersectionType()) {
      return (type.getTypes() ?? []).flatMap((part) => this.partsOf(part));
    }
    if (!(type.flags & TypeFlags.Instantiable)) return [type];
    const widest = this.checker.getBaseConstraintOfType(type);
    return widest?.id === type.id ? [] : this.partsOf(widest);
  }

  private tell(name: string): void {
    if (!this.found.has(name)) this.found.set(name, this.file);
  }
}

function isOurs({ declarations }: Sign): boolean {
  const sources = SOURCES.toLowerCase();
  return declarations.length > 0 && declarations.every(({ path }) => path.toLowerCase().startsWith(sources));
}

/** Whether a value goes to where another type may be wanted of it: an argument, an answer, a part of one. */
function isGiven(node: ast.Node, [parent, ...above]: readonly ast.Node[]): boolean {
  if (!parent) return false;
  if (ast.isCallExpression(parent)) return parent.expression !== node && !isOwnThread(parent);
  if (ast.isNewExpression(parent)) return parent.expression !== node;
  if (ast.isReturnStatement(parent)) return true;
  if (ast.isArrowFunction(parent)) return parent.body === node && !isAsking(above[0]);
  if (ast.isVariableDeclaration(parent)) return parent.initializer === node && parent.type !== undefined;
  const isPart =
    (ast.isPropertyAssignment(parent) && parent.initializer === node) ||
    ast.isShorthandPropertyAssignment(parent) ||
    ast.isSpreadAssignment(parent) ||
    ast.isArrayLiteralExpression(parent) ||
    ast.isObjectLiteralExpression(parent) ||
    ast.isParenthesizedExpression(parent) ||
    ast.isConditionalExpression(parent);
  return isPart && isGiven(parent, above);
}

function isAsking(call: ast.Node | undefined): boolean {
  const callee = call && ast.isCallExpression(call) ? call.expression : undefined;
  return callee !== undefined && ast.isPropertyAccessExpression(callee) && ASKING.has(callee.name.text);
}

/** What is posted to a thread meets the page's own script there. */
function isOwnThread({ expression }: ast.CallExpression): boolean {
  return ast.isPropertyAccessExpression(expression) && expression.name.text === 'postMessage';
}
